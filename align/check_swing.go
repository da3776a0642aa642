package align

import (
	"fmt"
	"math"

	"onphrase/plan"
	"onphrase/plan/say"
)

var swingTooSlow = Check{
	Code:     "swing-too-slow",
	Title:    "a swing is counted so slowly that it stops swinging",
	Why:      "A swing lives from its own momentum; slower than that, people hold the weight up with arms and back.",
	Source:   "Wesley & Kivi 2017, Int J Sports Sci 7:122-127: 32-48 swings a minute",
	Severity: Watch,
	Left:     "no tempo within 5 % makes it swing",
	step: func(j *judge) []Finding {
		var out []Finding
		for i := j.from; i < j.to; i++ {
			if f, ok := j.sagging(&j.part.rows[i]); ok {
				out = append(out, f)
			}
		}
		return out
	},
}

// sagging judges the rhythm of one row of a set.
func (l *placedClass) sagging(r *placedRow) (Finding, bool) {
	if r.reps == nil || r.music == nil {
		return Finding{}, false
	}
	set, _ := r.item.Work.(plan.Set)
	p, ok := l.paceOf(set, r.reps.Rhythm, r.tempo())
	if !ok || !p.sags() {
		return Finding{}, false
	}
	f := r.about(Watch)
	per := p.bpm / float64(p.rhythm.Counts())
	f.Figures = map[string]float64{
		"seconds_per_phase": p.slowest(), "limit_slow_seconds": p.limit.TooSlow, "bpm": p.bpm, "reps_per_minute": per,
	}
	f.Message = fmt.Sprintf("%s, %d x %s at %s BPM: %s a minute is slower than a swing goes (%s s each way, at most "+
		"%s s)",
		r.Item, r.reps.N, r.Rhythm, say.Num(p.bpm, 1), say.Num(per, 0), say.Num(p.slowest(), 2),
		say.Num(p.limit.TooSlow, 2))
	f.Fix = fmt.Sprintf("music of at least %s BPM", say.Num(math.Ceil(p.slowest()*p.bpm/p.limit.TooSlow), 0))
	if half, ok := l.quicker(set, p); ok {
		f.Fix = fmt.Sprintf("%d x %s in the same %s; or %s", 2*r.reps.N, half, say.Many(r.Counts, "count"), f.Fix)
	}
	return f, true
}

// quicker is a rhythm of half as many counts, where it can be controlled.
func (l *placedClass) quicker(s plan.Set, p pace) (plan.Rhythm, bool) {
	r := p.rhythm
	if r.Pulse || r.Down%2+r.Hold%2+r.Up%2+r.Rest%2 > 0 {
		return r, false
	}
	half := plan.Rhythm{Down: r.Down / 2, Hold: r.Hold / 2, Up: r.Up / 2, Rest: r.Rest / 2}
	q, ok := l.paceOf(s, half, p.bpm)
	return half, ok && q.grade() == ""
}
