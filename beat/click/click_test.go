package click

import (
	"encoding/binary"
	"io"
	"math"
	"testing"

	"onphrase/beat"
)

// tone is music of one steady pitch.
type tone struct{ at, samples int }

func (s *tone) Rate() int     { return 44100 }
func (s *tone) Channels() int { return 2 }
func (s *tone) value(i int) float32 {
	return float32(0.9 * math.Sin(2*math.Pi*220*float64(i)/44100))
}
func (s *tone) Read(dst []float32) (int, error) {
	n := 0
	for ; n+1 < len(dst) && s.at < s.samples; n += 2 {
		dst[n], dst[n+1] = s.value(s.at), s.value(s.at)
		s.at++
	}
	if n == 0 {
		return 0, io.EOF
	}
	return n, nil
}

func sample() beat.Track {
	t := beat.Track{Meter: 4}
	for i := range 44 {
		t.Beats = append(t.Beats, 0.3137+float64(i)*0.4683)
		t.BeatInBar = append(t.BeatInBar, i%4+1)
	}
	t.Phrases = []beat.Phrase{{Beat: 8, Counts: 32}, {Beat: 40, Counts: 4}}
	return t
}

// In the WAV file as written, with the music taken away again, every click
// begins within a millisecond of its count, in its own pitch.
func TestClicksInTheFile(t *testing.T) {
	track := sample()
	src := &tone{samples: 44100 * 22}
	wav, err := WAV(src, Of(track))
	if err != nil {
		t.Fatal(err)
	}
	const head = 44
	if len(wav) != head+4*src.samples || binary.LittleEndian.Uint32(wav[40:]) != uint32(4*src.samples) ||
		binary.LittleEndian.Uint32(wav[24:]) != 44100 {
		t.Fatalf("%d bytes, header % x", len(wav), wav[:head])
	}
	rest := make([]float64, src.samples)
	for i := range rest {
		v := int16(binary.LittleEndian.Uint16(wav[head+4*i:]))
		rest[i] = float64(v)/math.MaxInt16 - 0.5*float64(src.value(i))
	}
	worst := 0.0
	for i, want := range track.Beats {
		from := int((want - 0.1) * 44100)
		at := from
		for at < len(rest) && math.Abs(rest[at]) < 0.05 {
			at++
		}
		worst = max(worst, math.Abs(float64(at)/44100-want))
		if got := pitch(rest[at : at+1000]); got != Of(track)[i].Pitch {
			t.Errorf("count %d: %g Hz, want %g", i, got, Of(track)[i].Pitch)
		}
	}
	t.Logf("the farthest click is %.4f ms from its count", worst*1000)
	if worst > 0.001 {
		t.Errorf("a click is %.2f ms from its count", worst*1000)
	}
}

// pitch is that of the three which a click is likest to.
func pitch(x []float64) Pitch {
	var best Pitch
	most := 0.0
	for _, p := range []Pitch{Count, One, PhraseStart} {
		re, im := 0.0, 0.0
		for i, v := range x {
			s, c := math.Sincos(2 * math.Pi * float64(p) * float64(i) / 44100)
			re, im = re+v*c, im+v*s
		}
		if e := math.Hypot(re, im); e > most {
			best, most = p, e
		}
	}
	return best
}

// Count 1 is the first count of an eight, in the lead-in counted back from the
// first phrase; where there are three counts to a bar, that of the bar.
func TestOf(t *testing.T) {
	for i, c := range Of(sample()) {
		want := Count
		switch {
		case i == 8 || i == 40:
			want = PhraseStart
		case i%8 == 0:
			want = One
		}
		if c.Pitch != want {
			t.Errorf("count %d: %g Hz, want %g", i, c.Pitch, want)
		}
	}
	waltz := beat.Track{Meter: 3, Beats: []float64{1, 2, 3, 4}, BeatInBar: []int{1, 2, 3, 1},
		Phrases: []beat.Phrase{{Counts: 4}}}
	if got := Of(waltz); got[0].Pitch != PhraseStart || got[3].Pitch != One || got[2].Pitch != Count {
		t.Errorf("%v", got)
	}
	six := beat.Track{Meter: 2, Phrases: []beat.Phrase{{Counts: 16}}}
	for i := range 16 {
		six.Beats, six.BeatInBar = append(six.Beats, float64(i)), append(six.BeatInBar, i%2+1)
	}
	if got := Of(six); got[2].Pitch != Count || got[8].Pitch != One {
		t.Errorf("6/8 is clicked in eights: %v", got)
	}
}
