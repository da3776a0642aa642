package plan

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Rhythm is how the counts of one repetition are shared out. A pulse takes
// one count, half of it each way, and has none of the other figures.
type Rhythm struct {
	Down, Hold, Up, Rest int // counts
	Pulse                bool
}

// Counts is the number of counts of one repetition.
func (r Rhythm) Counts() int {
	if r.Pulse {
		return 1
	}
	return r.Down + r.Hold + r.Up + r.Rest
}

// String writes the rhythm as ParseRhythm reads it: "2-2" down and up,
// "2-1-2-1" with holds, "pulse".
func (r Rhythm) String() string {
	switch {
	case r.Pulse:
		return "pulse"
	case r.Hold == 0 && r.Rest == 0:
		return fmt.Sprintf("%d-%d", r.Down, r.Up)
	}
	return fmt.Sprintf("%d-%d-%d-%d", r.Down, r.Hold, r.Up, r.Rest)
}

// ParseRhythm reads a rhythm: counts down and up ("2-2", "3-1"), counts
// down, hold, up, hold ("2-1-2-1"), "pulse" (one count, part range), or
// "singles" (1-1). Words with two meanings in the trade are refused.
func ParseRhythm(s string) (Rhythm, error) {
	r, f := parseRhythm(plain(s))
	if f != nil {
		return Rhythm{}, f
	}
	return r, nil
}

// maxPhase bounds the counts of one figure of a rhythm: two eights, 7 s at
// 138 BPM.
const maxPhase = 16

var (
	rhythmFigures = regexp.MustCompile(`^[0-9]{1,3}(?: ?- ?[0-9]{1,3})+$`)
	nCount        = regexp.MustCompile(`^([0-9]{1,2}|[a-z]+)(?:[ -]?counts?)?$`)
	twoFigures    = regexp.MustCompile(`^([0-9]{1,2})[^0-9.]+([0-9]{1,2})[^0-9]*$`)
)

func parseRhythm(s string) (Rhythm, *fault) {
	s = strings.TrimSpace(s)
	switch s {
	case "pulse", "pulses":
		return Rhythm{Pulse: true}, nil
	case "single", "singles":
		return Rhythm{Down: 1, Up: 1}, nil
	}
	if !rhythmFigures.MatchString(s) {
		return Rhythm{}, rhythmFault(s)
	}
	var n []int
	for _, piece := range strings.Split(s, "-") {
		v := integer(strings.TrimSpace(piece))
		if v > maxPhase {
			return Rhythm{}, &fault{msg: fmt.Sprintf("%s has a phase of %d counts", shown(s), v),
				hint: fmt.Sprintf("at most %d counts one way", maxPhase)}
		}
		n = append(n, v)
	}
	switch {
	case len(n) == 3:
		return Rhythm{}, &fault{msg: shown(s) + " has three figures",
			hint: fmt.Sprintf("down-hold-up-hold has four: %d-%d-%d-0, or %d-0-%d-%d?", n[0], n[1], n[2], n[0], n[1], n[2])}
	case len(n) > 4:
		return Rhythm{}, &fault{msg: shown(s) + " has too many figures", hint: "two (down-up) or four (down-hold-up-hold)"}
	case len(n) == 2:
		n = []int{n[0], 0, n[1], 0}
	}
	if n[0] == 0 || n[2] == 0 {
		return Rhythm{}, &fault{msg: shown(s) + " has no count for one of the ways",
			hint: "down and up take at least 1 count each; pulse takes 1 for both"}
	}
	return Rhythm{Down: n[0], Hold: n[1], Up: n[2], Rest: n[3]}, nil
}

// rhythmFault says why s is no rhythm, with the meanings it may have.
func rhythmFault(s string) *fault {
	f := &fault{msg: shown(s) + " is no rhythm",
		hint: "counts down and up like 2-2, or down-hold-up-hold like 2-1-2-1, or pulse"}
	if s == "double" || s == "doubles" {
		f.msg = shown(s) + " has two meanings"
		f.hint = "2-2 (2 down 2 up, 4 counts a rep), or 1-1 twice on one side?"
		return f
	}
	if m := nCount.FindStringSubmatch(s); m != nil {
		n, ok := numberWords[m[1]]
		if !ok {
			n, _ = strconv.Atoi(m[1])
		}
		if n >= 1 && n <= maxPhase {
			f.msg = shown(s) + " has two meanings"
			f.hint = fmt.Sprintf("%s or %s?", digitsOf(n, n), perRep(n))
		}
		return f
	}
	if m := twoFigures.FindStringSubmatch(s); m != nil {
		f.hint = fmt.Sprintf("%s-%s?", m[1], m[2])
	}
	return f
}

// digitsOf writes a rhythm out: "2-2 (2 down 2 up, 4 counts a rep)".
func digitsOf(down, up int) string {
	return fmt.Sprintf("%d-%d (%d down %d up, %d counts a rep)", down, up, down, up, down+up)
}

// perRep reads "N counts" as those of a whole repetition.
func perRep(n int) string {
	if n == 1 {
		return "pulse (1 count a rep)"
	}
	return digitsOf(n-n/2, n/2)
}
