package decode

import (
	"testing"
	"time"
)

// BenchmarkDecode reports how many times faster than real time each format is.
func BenchmarkDecode(b *testing.B) {
	const seconds = 60
	music := synth(44100, 2, seconds)
	for _, e := range encodings {
		b.Run(e.name, func(b *testing.B) {
			path := e.make(b, music)
			b.ReportAllocs()
			for b.Loop() {
				s, err := Open(path, Auto)
				if err != nil {
					b.Fatal(err)
				}
				buf := make([]float32, 8192)
				for err == nil {
					_, err = s.Read(buf)
				}
				s.Close()
			}
			b.ReportMetric(seconds/(b.Elapsed()/time.Duration(b.N)).Seconds(), "x-real-time")
		})
	}
}

// BenchmarkSurvey is the pass over the headers that comes before decoding.
func BenchmarkSurvey(b *testing.B) {
	path := lame(b, synth(44100, 2, 60), "-b", "192")
	for b.Loop() {
		s, err := Open(path, Builtin)
		if err != nil {
			b.Fatal(err)
		}
		s.Close()
	}
}
