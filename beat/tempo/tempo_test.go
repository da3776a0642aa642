package tempo

import (
	"math"
	"testing"
)

// pulses is an onset curve with a soft peak at each beat of the given tempo.
func pulses(seconds float64, bpm func(t float64) float64) []float64 {
	x := make([]float64, int(seconds*100))
	for t := 0.3; t < seconds-0.1; t += 60 / bpm(t) {
		for d := -3; d <= 3; d++ {
			i := int(math.Round(t*100)) + d
			x[i] += math.Exp(-float64(d*d) / 2)
		}
	}
	return x
}

// octave is how far a period is from a tempo or its half or double, relative.
func octave(period, bpm float64) float64 {
	best := math.Inf(1)
	for _, f := range []float64{0.5, 1, 2} {
		best = min(best, math.Abs(period*bpm*f/60-1))
	}
	return best
}

func TestPathOfSteadyPulses(t *testing.T) {
	for _, bpm := range []float64{66, 93.5, 120, 128, 140.2, 175} {
		c := Measure([][]float64{pulses(40, func(float64) float64 { return bpm })}, 100).Path()
		if e := octave(c.At(20), bpm); e > 0.002 {
			t.Errorf("%v BPM: found %.2f", bpm, 60/c.At(20))
		}
	}
}

func TestStretchesPartTwoSongs(t *testing.T) {
	x := pulses(120, func(t float64) float64 {
		if t < 60 {
			return 128
		}
		return 100
	})
	s := Measure([][]float64{x}, 100).Path().Stretches(120)
	if len(s) != 2 {
		t.Fatalf("%d stretches, want 2", len(s))
	}
	if math.Abs(s[0].To-60) > 4 || octave(s[0].Curve.At(30), 128) > 0.005 || octave(s[1].Curve.At(90), 100) > 0.005 {
		t.Errorf("break at %.1f s, %.1f and %.1f BPM", s[0].To, 60/s[0].Curve.At(30), 60/s[1].Curve.At(90))
	}
}

func TestShortSoundHasACurve(t *testing.T) {
	if c := Measure([][]float64{make([]float64, 50)}, 100).Path(); len(c.Period) != 1 {
		t.Errorf("%d periods, want 1", len(c.Period))
	}
}
