package say

import "testing"

func TestLists(t *testing.T) {
	for _, c := range []struct {
		words         []string
		and, or, ways string
	}{
		{nil, "", "", ""},
		{[]string{"a"}, "a", "a", "a"},
		{[]string{"a", "b"}, "a and b", "a or b", "a; or b"},
		{[]string{"a", "b", "c"}, "a, b and c", "a, b or c", "a; b; or c"},
	} {
		if and, or, ways := And(c.words), Or(c.words), Ways(c.words); and != c.and || or != c.or || ways != c.ways {
			t.Errorf("%q: %q, %q, %q", c.words, and, or, ways)
		}
	}
}

func TestClip(t *testing.T) {
	for _, c := range []struct {
		in   string
		n    int
		want string
	}{{"short.mp3", 9, "short.mp3"}, {"a-long-name.mp3", 9, "a-lo….mp3"}, {"港港港港", 5, "港…港"}} {
		got := Clip(c.in, c.n)
		if got != c.want || Columns(got) > c.n {
			t.Errorf("%s in %d columns: %s, want %s", c.in, c.n, got, c.want)
		}
	}
}
