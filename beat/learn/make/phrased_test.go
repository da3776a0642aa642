package main

import "testing"

func TestBars(t *testing.T) {
	for _, c := range []struct {
		text            string
		quarters, meter int
	}{
		{"Begin Drum\n", 4, 4}, {"Time 3\nTimeSig 3 4\n", 3, 3}, {"  time 6\nTimesig 6 8\n", 6, 2},
		{"Time 2\nTimesig 6/8\n", 2, 2},
		{"Time 12\n", 12, 4}, {"Time 4\nTime 3\n", 3, 0}, {"Time 6\n", 6, 0}, {"Time 5\n", 5, 0},
	} {
		if q, m := bars(c.text); q != c.quarters || m != c.meter {
			t.Errorf("%q: %d quarters, %d counts, want %d, %d", c.text, q, m, c.quarters, c.meter)
		}
	}
}
