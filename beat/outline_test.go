package beat

import (
	"math"
	"testing"
)

func TestOutlineOf(t *testing.T) {
	got := outlineOf([]float64{0, 1e-9, 0.02, 0.002, 0.02 / 1.995})
	for i, want := range []float64{-60, -60, 0, -10, -3} {
		if got[i] != want {
			t.Errorf("level %d is %g dB, want %g", i, got[i], want)
		}
	}
	if o := outlineOf([]float64{0, 0}); o[0] != silence {
		t.Errorf("silence is at %g dB", o[0])
	}
}

// Between averages amplitudes: -20 dB is a tenth.
func TestBetween(t *testing.T) {
	o := Outline{0, -20, -60, 0}
	for _, c := range []struct{ from, to, want float64 }{
		{0, 0.5, 1}, {0.5, 1, 0.1}, {0, 1, 0.55}, {1, 1.5, 0}, {1.9, 2, 1}, {0, 2, 0.525}, {2, 3, 0}, {-1, 0.2, 1},
		{0.6, 0.6, 0.1},
	} {
		if got := o.Between(c.from, c.to); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("from %g to %g: %g, want %g", c.from, c.to, got, c.want)
		}
	}
	if got := Outline(nil).Between(0, 1); got != 0 {
		t.Errorf("nothing known: %g", got)
	}
}
