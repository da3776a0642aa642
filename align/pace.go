package align

import (
	"math"

	"onphrase/plan"
)

// pace is a rhythm of a move on music: how long each way of a repetition
// takes and what its class of movement allows.
type pace struct {
	rhythm plan.Rhythm
	over   plan.Range
	limit  plan.Limit // of that range
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

// hardest is the way of a repetition that is hardest to control.
func (p pace) hardest() plan.Way {
	way, _ := p.limit.Judge(p.rhythm, p.over, p.bpm)
	return way
}

// slowest is the duration of the longest way of a repetition [s].
func (p pace) slowest() float64 {
	most := 0.0
	for _, c := range phases(p.rhythm) {
		most = max(most, c)
	}
	return most * 60 / p.bpm
}

// grade is how the hardest way compares with its limit: "" when fine.
func (p pace) grade() Severity {
	switch _, control := p.limit.Judge(p.rhythm, p.over, p.bpm); control {
	case plan.Borderline:
		return Watch
	case plan.OutOfReach:
		return Fix
	}
	return ""
}

// sags reports whether the slowest way takes longer than a swing does.
func (p pace) sags() bool {
	slow := p.limit.TooSlow
	return slow > 0 && ms(p.slowest()) > ms(slow)
}

// most is the fastest music on which every way is fine [BPM], rounded down: at
// the figure that is named the rhythm passes.
func (p pace) most() float64 {
	least := math.Inf(1)
	for _, w := range p.limit.Ways(p.rhythm) {
		least = min(least, w.Counts*60/w.Fine)
	}
	return math.Floor(least + 1e-9)
}

// paceOf looks up what limits a rhythm of a set; false when nothing does.
func (l *placedClass) paceOf(s plan.Set, r plan.Rhythm, bpm float64) (pace, bool) {
	move, ok := l.move(s.Move)
	if !ok {
		return pace{}, false
	}
	if r.Pulse { // part range already
		limit, ok := l.class.Catalog.Limits[plan.PulseClass]
		return pace{r, plan.FullRange, limit, bpm}, ok
	}
	limit, ok := l.class.Catalog.LimitFor(move)
	return pace{r, s.Range, limit.In(s.Range), bpm}, ok
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
