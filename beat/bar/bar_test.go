package bar

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat/spectral"
	"onphrase/beat/tone"
)

// steady is the evidence of a track in which every meter-th beat stands out.
func steady(n, meter, phase int) []float64 {
	e := make([]float64, n)
	for i := range e {
		e[i] = -1
		if (i-phase)%meter == 0 {
			e[i] = float64(meter - 1)
		}
	}
	return e
}

// fours are log-odds that leave no doubt about the meter.
func fours(meter int) float64 { return 10 * float64(7-2*meter) }

func counted(n, meter, phase int) []int {
	b := make([]int, n)
	for i := range b {
		b[i] = ((i-phase)%meter+meter)%meter + 1
	}
	return b
}

func TestFindCountsFromTheStrongBeat(t *testing.T) {
	for _, meter := range []int{3, 4} {
		for phase := range meter {
			b := find(steady(96, meter, phase), fours(meter), false, nil)
			if b.Meter != meter {
				t.Errorf("meter %d, want %d", b.Meter, meter)
			}
			if d := cmp.Diff(counted(96, meter, phase), b.BeatInBar); d != "" {
				t.Errorf("meter %d, phase %d (-want +got)\n%s", meter, phase, d)
			}
			if b.Trust < 0.8 {
				t.Errorf("meter %d, phase %d: trust %.2f in clear evidence", meter, phase, b.Trust)
			}
		}
	}
}

func TestSlips(t *testing.T) {
	clear := func(n, phase int) []float64 { // as clear as a good track
		e := steady(n, 4, phase)
		for i := range e {
			e[i] *= 1.5
		}
		return e
	}
	for _, c := range []struct {
		name     string
		evidence []float64
		seams    []int
		want     []int
	}{
		{"a beat lost in the middle", append(clear(80, 0), clear(79, 3)...), nil,
			append(counted(80, 4, 0), counted(79, 4, 3)...)},
		{"a bridge of four bars that sounds shifted", slices.Concat(clear(80, 0), clear(16, 2), clear(80, 0)), nil,
			counted(176, 4, 0)},
		{"the same at a change of tempo and back", slices.Concat(clear(80, 0), clear(16, 2), clear(80, 0)), []int{80, 96},
			slices.Concat(counted(80, 4, 0), counted(16, 4, 2), counted(80, 4, 0))},
		{"a change of tempo within the bars", clear(160, 0), []int{83}, counted(160, 4, 0)},
	} {
		if d := cmp.Diff(c.want, find(c.evidence, fours(4), false, c.seams).BeatInBar); d != "" {
			t.Errorf("%s (-want +got)\n%s", c.name, d)
		}
	}
}

func TestShortAndEmpty(t *testing.T) {
	for n := range 20 {
		b := find(make([]float64, n), fours(4), false, nil)
		if len(b.BeatInBar) != n || b.Meter != 4 {
			t.Errorf("%d beats: %d numbered, meter %d", n, len(b.BeatInBar), b.Meter)
		}
		if b.Trust > 0.3 {
			t.Errorf("%d beats without evidence: trust %.2f", n, b.Trust)
		}
	}
}

// Positions rise by one from beat to beat but for at most a few slips, and
// trust is a probability, whatever the evidence.
func TestNoiseIsCountedSteadily(t *testing.T) {
	for seed := range uint64(50) {
		r := rand.New(rand.NewPCG(seed, 1))
		e := make([]float64, 400)
		for i := range e {
			e[i] = 2.6 * r.NormFloat64() // as far as the clues of music reach together
		}
		b := find(e, fours(4), false, nil)
		slips := 0
		for i := 1; i < len(e); i++ {
			if b.BeatInBar[i] != b.BeatInBar[i-1]%b.Meter+1 {
				slips++
			}
		}
		if slips > 2 || b.Trust <= 0 || b.Trust > 1 {
			t.Errorf("seed %d: %d slips in noise, trust %g", seed, slips, b.Trust)
		}
	}
}

// TestEvidence builds beats that differ in one clue alone.
func TestEvidence(t *testing.T) {
	chord := func(key int) []float64 {
		x := make([]float64, tone.Classes)
		x[key%tone.Classes] = 1
		return x
	}
	for _, c := range []struct {
		name string
		set  func(s *Sound, i int)
	}{
		{"chords change on 1", func(s *Sound, i int) { s.Chroma[i] = chord(5 * (i / 4)) }},
		{"the bass changes on 1", func(s *Sound, i int) { s.Bass[i] = chord(7 * (i / 4)) }},
		{"the arrangement changes on 1", func(s *Sound, i int) { s.Level[i][2] = float64(i / 16 % 3) }},
		{"the kick falls on 1", func(s *Sound, i int) {
			if i%4 == 0 {
				s.Onset[i][kickRange*Parts] = 1
			}
		}},
	} {
		s := &Sound{}
		for i := range 128 {
			s.Onset = append(s.Onset, make([]float64, len(spectral.Ranges)*Parts))
			s.Level = append(s.Level, make([]float64, 5))
			s.Chroma = append(s.Chroma, chord(0))
			s.Bass = append(s.Bass, chord(0))
			c.set(s, i)
		}
		e := Evidence(s)
		sum := [4]float64{}
		for i, v := range e {
			sum[i%4] += v
		}
		if argmax(sum[:]) > 1 || sum[0] < 0 {
			t.Errorf("%s: evidence of the four counts %v", c.name, sum)
		}
		if d := cmp.Diff(counted(128, 4, 0), find(e, fours(4), false, nil).BeatInBar); d != "" {
			t.Errorf("%s (-want +got)\n%s", c.name, d)
		}
	}
}
