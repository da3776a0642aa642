package plan

import (
	"fmt"
	"strings"
)

// Start is where the first item of a part begins. At most one field is set;
// none means the first trusted phrase.
type Start struct {
	Pos    Pos
	Phrase int      // from 1
	Count  int      // from 1, the first count of phrase 1 being 1
	Time   *float64 // on the track's own timeline [s]; snapped to the nearest count
}

// maxStart bounds the phrase or count a part may start on.
const maxStart = 9999

func (m *mapping) start() Start {
	n := m.take("start")
	s := read(m, "start", n, parseStart)
	if n != nil {
		s.Pos = at(n)
	}
	return s
}

func parseStart(s string) (Start, *fault) {
	s = strings.TrimSpace(s)
	unit, figure, _ := strings.Cut(s, " ")
	figure = strings.TrimSpace(figure)
	switch {
	case unit == "phrase" && digits.MatchString(figure):
		n, f := whole(1, maxStart)(figure)
		return Start{Phrase: n}, f
	case unit == "count" && digits.MatchString(figure):
		n, f := whole(1, maxStart)(figure)
		return Start{Count: n}, f
	case clock.MatchString(s):
		t, f := parseClock(s)
		return Start{Time: &t}, f
	}
	return Start{}, &fault{msg: shown(s) + " is no place in a track", hint: startHint(s)}
}

func startHint(s string) string {
	if digits.MatchString(s) {
		return fmt.Sprintf("phrase %s (of 32 counts) or count %s?", s, s)
	}
	if t, f := parseLength(s); f == nil && t.Seconds > 0 {
		return fmt.Sprintf("%s? A place in the track is written m:ss", minutes(t.Seconds))
	}
	return "phrase 2, count 17 or 1:02.5 (minutes:seconds)"
}
