package ear

import (
	"testing"

	"onphrase/beat/spectral"
)

// BenchmarkMinute hears a minute of music.
func BenchmarkMinute(b *testing.B) {
	f := spectral.NewFrames(50, make([]float64, bands), pseudo(3000))
	for b.Loop() {
		Listen(f)
	}
}

// pseudo makes levels with Knuth's MMIX generator, as train.py does.
func pseudo(frames int) []float32 {
	x := make([]float32, frames*bands)
	s := uint64(1)
	for i := range x {
		s = s*6364136223846793005 + 1442695040888963407
		x[i] = float32(float64(s>>40) / (1 << 24) * 6)
	}
	return x
}
