package say

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Widths of Unicode Standard Annex 11: wide and fullwidth letters take two
// columns, combining marks none.
func TestColumns(t *testing.T) {
	for s, want := range map[string]int{"": 0, "abc": 3, "港の灯": 6, "e\u0301": 1, "é": 1, "Ａ": 2, "한": 2, "ｱ": 1,
		"a\u200db": 2, "Ω": 1} {
		if got := Columns(s); got != want {
			t.Errorf("Columns(%q) = %d, want %d", s, got, want)
		}
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		in   string
		n    int
		want []string
	}{
		{"", 10, []string{""}},
		{"do 8 x 2-2 now", 7, []string{"do", "8 x 2-2", "now"}},
		{"0.92 s each way", 6, []string{"0.92 s", "each", "way"}},
		{"港の灯り", 4, []string{"港の", "灯り"}},
		{"abcdefgh i", 3, []string{"abc", "def", "gh", "i"}},
	} {
		if diff := cmp.Diff(c.want, Wrap(c.in, c.n)); diff != "" {
			t.Errorf("Wrap(%q, %d):\n%s", c.in, c.n, diff)
		}
	}
}
