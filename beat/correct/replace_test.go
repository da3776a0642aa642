package correct

import (
	"slices"
	"strings"
	"testing"
)

// Whatever list a file is given, it has it when it is read again, and what
// stays keeps its comments.
func TestReplace(t *testing.T) {
	const src = "onphrase: 1\ntrack: a.mp3\nsound: s\ncorrections:\n  - half # by ear\n  - one: 0:15.000\n  - phrase: 0:31.000 # the drums\n"
	half, one, phrase := Correction{Kind: Half}, Correction{Kind: One, Time: 15}, Correction{Kind: Phrase, Time: 31}
	checked := Correction{Kind: Checked}
	for _, c := range []struct {
		after   []Correction
		comment string // that is still there
	}{
		{[]Correction{half, one, phrase, checked}, "by ear"},
		{[]Correction{half, phrase}, "the drums"},
		{[]Correction{half, checked, phrase}, "the drums"},
		{[]Correction{one, phrase}, "the drums"},
		{nil, ""},
	} {
		f, problems := Parse([]byte(src))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		f.Replace(c.after)
		out, err := f.Bytes()
		if err != nil {
			t.Fatal(err)
		}
		again, problems := Parse(out)
		if len(problems) > 0 || !slices.Equal(again.List, c.after) || !strings.Contains(string(out), c.comment) {
			t.Errorf("%v: %v, %v in\n%s", c.after, again.List, problems, out)
		}
	}
}
