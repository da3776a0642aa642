package align

import "onphrase/plan"

// pace is a rhythm of a move on music: how long each way of a repetition
// takes and what its class of movement allows.
type pace struct {
	rhythm plan.Rhythm
	limit  plan.Limit
	bpm    float64
}

// phases lists the ways of one repetition [counts].
func phases(r plan.Rhythm) []float64 {
	if r.Pulse {
		return []float64{0.5}
	}
	var out []float64
	for _, c := range []int{r.Down, r.Up} {
		if c > 0 {
			out = append(out, float64(c))
		}
	}
	return out
}

// fastest is the duration of the shortest way of a repetition [s], and its
// counts.
func (p pace) fastest() (seconds, counts float64) {
	for _, c := range phases(p.rhythm) {
		if counts == 0 || c < counts {
			counts = c
		}
	}
	return counts * 60 / p.bpm, counts
}

// slowest is the duration of the longest way of a repetition [s].
func (p pace) slowest() float64 {
	most := 0.0
	for _, c := range phases(p.rhythm) {
		most = max(most, c)
	}
	return most * 60 / p.bpm
}

// grade is how the fastest way compares with the limit: "" when fine.
func (p pace) grade() Severity {
	s, counts := p.fastest()
	switch {
	case counts == 0 || ms(s) >= ms(p.limit.Fine):
		return ""
	case ms(s) >= ms(p.limit.TooFast):
		return Watch
	}
	return Fix
}

// sags reports whether the slowest way takes longer than a swing does.
func (p pace) sags() bool {
	slow := p.limit.TooSlow
	return slow > 0 && ms(p.slowest()) > ms(slow)
}

// most is the fastest music on which the rhythm is fine [BPM].
func (p pace) most() float64 {
	_, counts := p.fastest()
	return counts * 60 / p.limit.Fine
}

// paceOf looks up what limits a rhythm of a set; false when nothing does.
func (l *placedClass) paceOf(s plan.Set, r plan.Rhythm, bpm float64) (pace, bool) {
	move, ok := l.move(s.Move)
	if !ok {
		return pace{}, false
	}
	if r.Pulse { // part range already
		limit, ok := l.class.Catalog.Limits[plan.PulseClass]
		return pace{r, limit, bpm}, ok
	}
	limit, ok := l.class.Catalog.LimitFor(move)
	return pace{r, limit.In(s.Range), bpm}, ok
}

// ladder is the rhythms instructors slow down to, each twice the last.
var ladder = []plan.Rhythm{{Down: 1, Up: 1}, {Down: 2, Up: 2}, {Down: 4, Up: 4}, {Down: 8, Up: 8}}

// slower is the shortest rhythm not faster than r that is fine: an even one
// of the ladder, or r itself with every figure doubled.
func (l *placedClass) slower(s plan.Set, r plan.Rhythm, bpm float64) (plan.Rhythm, bool) {
	tries := ladder
	if r.Hold > 0 || r.Rest > 0 {
		tries = []plan.Rhythm{scaled(r, 2), scaled(r, 4)}
	}
	for _, t := range tries {
		if t == r || t.Counts() < r.Counts() {
			continue
		}
		if p, ok := l.paceOf(s, t, bpm); ok && p.grade() == "" && !p.sags() {
			return t, true
		}
	}
	return plan.Rhythm{}, false
}

func scaled(r plan.Rhythm, by int) plan.Rhythm {
	return plan.Rhythm{Down: r.Down * by, Hold: r.Hold * by, Up: r.Up * by, Rest: r.Rest * by}
}
