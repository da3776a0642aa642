package tap_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/beat/tap"
)

// steadyTrack has counts of a tempo from a time on, in phrases of 32.
func steadyTrack(bpm, from float64, counts int) beat.Track {
	t := beat.Track{BPM: bpm, Meter: 4, Duration: from + float64(counts)*60/bpm + 1}
	for i := range counts {
		t.Beats = append(t.Beats, from+float64(i)*60/bpm)
		t.BeatInBar = append(t.BeatInBar, i%4+1)
	}
	for i := 0; i < counts; i += 32 {
		n := min(32, counts-i)
		t.Phrases = append(t.Phrases, beat.Phrase{Time: t.Beats[i], Beat: i, Counts: n, Kind: beat.KindOf(n)})
	}
	return t
}

// tapped are taps on counts as a person makes them: 30 ms of jitter, 25 ms
// early, now and then one missed or struck twice.
func tapped(r *rand.Rand, counts []float64) []float64 {
	var taps []float64
	for i, c := range counts {
		if i > 1 && i < len(counts)-1 && r.IntN(12) == 0 {
			continue
		}
		taps = append(taps, c-0.025+0.030*(2*r.Float64()-1))
		if r.IntN(20) == 0 {
			taps = append(taps, taps[len(taps)-1]+0.06)
		}
	}
	return taps
}

// Whatever was heard and whatever she means: after the corrections her counts
// are the track's, within a hundredth of a second, and count 1 is where she
// tapped it.
func TestTapsPutATrackRight(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, c := range []struct {
		name        string
		times       float64 // heard tempo against the true one
		shift       float64 // of what was heard, in true counts
		wrongPhrase int     // counts by which the phrases are out
	}{
		{"as heard", 1, 0, 0},
		{"count 1 one late", 1, 0, 1},
		{"count 1 two early", 1, 0, -2},
		{"off the beat", 1, 0.5, 0},
		{"heard twice as fast", 2, 0, 0},
		{"heard twice as fast, off by one", 2, 0.5, 0},
		{"heard half as fast", 0.5, 0, 0},
		{"heard at 3:2", 1.5, 0, 0},
		{"heard at 4:3", 4.0 / 3, 0, 0},
		{"heard at 3:4", 0.75, 0, 0},
	} {
		for _, bpm := range []float64{96, 124, 132, 150} {
			right := steadyTrack(bpm, 1.3, 320)
			heard := steadyTrack(bpm*c.times, 1.3+(c.shift+float64(c.wrongPhrase))*60/bpm, int(300*c.times))
			for range 20 {
				from := 64 + 32*r.IntN(4)
				taps := tapped(r, right.Beats[from:from+24])
				got, err := tap.Read(heard, taps, 0)
				if err != nil {
					t.Errorf("%s at %.0f: %v", c.name, bpm, err)
					continue
				}
				fixed, err := correct.Apply(heard, got.Fixes)
				if err != nil {
					t.Errorf("%s at %.0f: %v: %v", c.name, bpm, got.Fixes, err)
					continue
				}
				if d := off(fixed.Beats, right.Beats[40:250]); d > 0.01 {
					t.Errorf("%s at %.0f: counts %.0f ms off after %v (%s)", c.name, bpm, 1000*d, got.Fixes, got.Says)
				}
				if d := off(starts(fixed), []float64{right.Beats[from]}); d > 0.01 {
					t.Errorf("%s at %.0f: no phrase within %.0f ms of the tapped count 1 after %v", c.name, bpm, 1000*d, got.Fixes)
				}
			}
		}
	}
}

// off is the greatest distance of the times wanted from those there are [s].
func off(have, want []float64) float64 {
	worst := 0.0
	for _, w := range want {
		least := math.Inf(1)
		for _, h := range have {
			least = min(least, math.Abs(h-w))
		}
		worst = max(worst, least)
	}
	return worst
}

func starts(t beat.Track) []float64 {
	var out []float64
	for _, p := range t.Phrases {
		out = append(out, p.Time)
	}
	return out
}

// Taps that agree with what was heard correct nothing.
func TestTapsThatAgree(t *testing.T) {
	heard := steadyTrack(126, 0.4, 300)
	got, err := tap.Read(heard, heard.Beats[64:80], 0)
	if err != nil || len(got.Fixes) > 0 || got.Says != "as heard" || math.Abs(got.BPM-126) > 0.01 {
		t.Errorf("%+v, %v; want nothing to correct", got, err)
	}
}

// The tempo of 32 counts is known to a tenth of a BPM or so: with a jitter of
// 15 ms the slope of a straight line through 33 taps has a standard deviation of
// .27 ms, .07 BPM at 126; the worst of 50 is four times that.
func TestFit(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	var worst float64
	for range 50 {
		var taps []float64
		for i := range 33 {
			taps = append(taps, 5+float64(i)*60/126+0.015*r.NormFloat64())
		}
		p, err := tap.Fit(taps)
		if err != nil {
			t.Fatal(err)
		}
		worst = max(worst, math.Abs(p.BPM()-126))
	}
	if worst > 0.3 {
		t.Errorf("worst error %.2f BPM of 32 counts", worst)
	}
}

func TestFitRefuses(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	random := []float64{}
	at := 0.0
	for range 20 {
		at += 0.05 + 2*r.Float64()
		random = append(random, at)
	}
	for name, taps := range map[string][]float64{
		"too few": {1, 2, 3}, "none": nil, "not in order": {1, 2, 3, 2, 4, 5, 6, 7}, "all one": {1, 1, 1, 1, 1, 1, 1, 1},
		"at random": random,
	} {
		if p, err := tap.Fit(taps); err == nil {
			t.Errorf("%s: %+v, want an error", name, p)
		}
	}
}
