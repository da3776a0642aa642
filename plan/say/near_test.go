package say

import "testing"

// Ref: "kitten"/"sitting" is the textbook example of Levenshtein's distance;
// "ca"/"abc" that of the restricted distance (3, where the unrestricted one
// is 2). Both from memory.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"squat", "squat", 0}, {"sqaut", "squat", 1}, {"kitten", "sitting", 3}, {"ca", "abc", 3},
		{"größe", "grösse", 2},
	} {
		for _, pair := range [][2]string{{c.a, c.b}, {c.b, c.a}} {
			if got := slips([]rune(pair[0]), []rune(pair[1]), 9); got != c.want {
				t.Errorf("%q and %q are %d slips apart, want %d", pair[0], pair[1], got, c.want)
			}
		}
	}
	if got := slips([]rune("kitten"), []rune("sitting"), 2); got != 2 {
		t.Errorf("the limit 2 gives %d", got)
	}
}

func TestNearest(t *testing.T) {
	words := []string{"warm-up", "cardio", "strength", "core", "cool-down"}
	for typed, want := range map[string]string{"Warm up": "warm-up", "strenght": "strength", "cor": "core",
		"cooldwn": "cool-down", "yoga": "", "": "", "x": ""} {
		if got, ok := Nearest(typed, words); got != want || ok != (want != "") {
			t.Errorf("%q is nearest to %q, want %q", typed, got, want)
		}
	}
}
