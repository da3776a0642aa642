package reading

import "testing"

// A near tie is settled by the tempi that classes are taught at; what is clear
// stays.
func TestPreferred(t *testing.T) {
	at := func(bpm, odds float64) Reading { return Reading{Period: 60 / bpm, Odds: odds} }
	for _, c := range []struct {
		name string
		all  []Reading
		want int
	}{
		{"nothing", nil, 0},
		{"a near tie", []Reading{at(200, 0.5), at(100, 0.45)}, 1},
		{"the same the other way round", []Reading{at(100, 0.5), at(200, 0.45)}, 0},
		{"clear", []Reading{at(174, 0.8), at(116, 0.15)}, 0},
		{"half is not taught either", []Reading{at(172, 0.5), at(86, 0.45)}, 0},
		{"the likeliest of two", []Reading{at(50, 0.4), at(100, 0.3), at(150, 0.25)}, 1},
		{"one between that is not taught", []Reading{at(60, 0.35), at(240, 0.34), at(120, 0.3)}, 2},
	} {
		if got := preferred(c.all); got != c.want {
			t.Errorf("%s: reading %d, want %d", c.name, got, c.want)
		}
	}
}
