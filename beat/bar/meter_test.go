package bar

import "testing"

// Every second beat of 6/8 is a count 1, of 12/8 every fourth; both part into
// thirds. Music that parts into halves is counted in four, however alike the
// halves of its bars.
//
// Ref: Lerdahl & Jackendoff 1983, "A generative theory of tonal music": meter
// as levels of beats, a bar level above and a level of division below (from
// memory).
func TestMeter(t *testing.T) {
	bars := func(pattern ...float64) []float64 {
		var e []float64
		for range 24 {
			e = append(e, pattern...)
		}
		return e
	}
	six, twelve, three := bars(2, -2, 1.6, -2), bars(4, -2, -0.5, -2), bars(3, -1, -1)
	for _, c := range []struct {
		name     string
		evidence []float64
		triple   bool
		want     int
	}{
		{"6/8", six, true, 2}, {"2/4", six, false, 4}, {"12/8", twelve, true, 4}, {"4/4", twelve, false, 4},
		{"3/4", three, false, 3}, {"9/8", three, true, 3},
		{"too short to tell", six[:8], true, 4},
	} {
		b := find(c.evidence, threes(c.evidence, &Sound{}), c.triple, nil)
		if b.Meter != c.want {
			t.Errorf("%s: bars of %d, want %d", c.name, b.Meter, c.want)
		}
		if b.Meter == 2 && (b.BeatInBar[0] != 1 || b.BeatInBar[2] != 1 || b.Trust < 0.7) { // by evidence alone
			t.Errorf("%s: counts %v, trust %.2f", c.name, b.BeatInBar[:4], b.Trust)
		}
	}
}

func TestTriple(t *testing.T) {
	for _, c := range []struct {
		inner [2]float64 // on thirds, on quarters
		want  bool
	}{{[2]float64{3, 1}, true}, {[2]float64{1, 1}, false}, {[2]float64{0.5, 3}, false}, {[2]float64{}, false}} {
		if got := triple(&Sound{Inner: [][2]float64{c.inner, c.inner}}); got != c.want {
			t.Errorf("%v: triple %v", c.inner, got)
		}
	}
}
