package grid

import "testing"

func rowFrom(from, period float64, n int) []float64 {
	out := make([]float64, n)
	for k := range out {
		out[k] = from + period*float64(k)
	}
	return out
}

// A comb holds what lies on either half of its counts, and nothing else.
func TestCombHolds(t *testing.T) {
	c := CombOf(rowFrom(1, 0.5, 64))
	for _, x := range []struct {
		name  string
		beats []float64
		want  bool
	}{
		{"its own counts, later", rowFrom(51, 0.5, 32), true},
		{"its off-beats", rowFrom(51.25, 0.5, 32), true},
		{"its off-beats before it", rowFrom(-9.75, 0.5, 16), true},
		{"a little late", rowFrom(51.02, 0.5, 32), true},
		{"a third late", rowFrom(51+0.5/3, 0.5, 32), false},
		{"another tempo", rowFrom(51, 0.51, 32), false},
		{"too few to tell", rowFrom(51, 0.5, 7), false},
		{"half its tempo", rowFrom(51, 1, 32), false},
	} {
		if got := c.Holds(x.beats); got != x.want {
			t.Errorf("%s: held %v", x.name, got)
		}
	}
}

// Rows far apart tell the period more exactly than each of them, whichever half
// they are on.
func TestCombThroughRows(t *testing.T) {
	a, b := rowFrom(1, 0.5, 16), rowFrom(1+0.5*200.5, 0.5, 16)
	for i := range a {
		a[i] += 0.002 * float64(i%2) // jitter
	}
	c := CombOf(rowFrom(1, 0.5, 32)).Through([][]float64{a, b})
	if !near(c.Half, 0.25, 2e-5) || !near(c.At(c.Nearest(1)), 1.001, 0.001) || !near(c.Off(1+0.5*200.5), 0, 0.001) {
		t.Errorf("%+v", c)
	}
}
