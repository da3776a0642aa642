package align

import (
	"encoding/json"
	"testing"

	"onphrase/plan"
)

// Rhythms are printed in digits with their words: common practice, no source.
func TestRhythm(t *testing.T) {
	for _, c := range []struct {
		rhythm       Rhythm
		short, words string
	}{
		{Rhythm{}, "", ""},
		{Rhythm{plan.Rhythm{Down: 2, Up: 2}}, "2-2", "2 down 2 up"},
		{Rhythm{plan.Rhythm{Down: 3, Up: 1}}, "3-1", "3 down 1 up"},
		{Rhythm{plan.Rhythm{Down: 2, Hold: 1, Up: 3, Rest: 4}}, "2-1-3-4", "2 down 1 hold 3 up 4 hold"},
		{Rhythm{plan.Rhythm{Down: 2, Hold: 1, Up: 1}}, "2-1-1-0", "2 down 1 hold 1 up"},
		{Rhythm{plan.Rhythm{Pulse: true}}, "pulse", "pulse"},
	} {
		if short, words := c.rhythm.String(), c.rhythm.Words(); short != c.short || words != c.words {
			t.Errorf("%q, %q; want %q, %q", short, words, c.short, c.words)
		}
		src, err := json.Marshal(c.rhythm)
		var back Rhythm
		if err != nil || string(src) != `"`+c.short+`"` || json.Unmarshal(src, &back) != nil || back != c.rhythm {
			t.Errorf("%s is %s in JSON, back %v (%v)", c.short, src, back, err)
		}
	}
}
