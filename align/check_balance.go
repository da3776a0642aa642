package align

import (
	"fmt"
	"math"

	"onphrase/plan/say"
)

// uneven is the ratio of the seconds under load of two opposite patterns from
// which it is worth a word, and lopsided from which it is worth a change.
// Common practice, no source.
const uneven, lopsided = 1.5, 2.0

// opposites are patterns that a whole-body class usually keeps even.
var opposites = []struct {
	name  string
	a, b  []string
	grave Severity // at most
}{
	{"push and pull", []string{"push"}, []string{"pull"}, Watch},
	{"squat with lunge and hinge", []string{"squat", "lunge"}, []string{"hinge"}, Note},
}

var unbalanced = Check{
	Code:  "patterns-uneven",
	Title: "one movement pattern gets much more work than its opposite",
	Why: "A class of presses without rows trains what people who sit all day have too much of already; knees " +
		"and hips, too, want both squats and hinges.",
	Source:   "half as much again is worth a word, twice is worth a change: common practice, no source",
	Severity: Watch,
	Left:     "takes other exercises, and those are for you to choose",
	find: func(l *placedClass) []Finding {
		if l.length() < wholeClass {
			return nil
		}
		var out []Finding
		for _, o := range opposites {
			a, repsA := l.loadOf(o.a)
			b, repsB := l.loadOf(o.b)
			if max(a, b) < leastLoad || max(a, b) < uneven*min(a, b) {
				continue
			}
			f := Finding{Severity: Note, Line: l.class.Pos.Line}
			if max(a, b) >= lopsided*min(a, b) {
				f.Severity = o.grave
			}
			f.Figures = map[string]float64{
				"first_seconds": a, "second_seconds": b, "first_reps": float64(repsA), "second_reps": float64(repsB),
			}
			f.Message = fmt.Sprintf("%s: %s and %s under load (%s and %s)", o.name, say.Clock(a), say.Clock(b),
				say.Many(repsA, "rep"), say.Many(repsB, "rep"))
			less := o.a
			if b < a {
				less = o.b
			}
			f.Fix = fmt.Sprintf("%s more of %s; combinations count for neither", say.Clock(math.Abs(a-b)), less[0])
			out = append(out, f)
		}
		return out
	},
}

// leastLoad is the work from which a balance means anything [s]: two sets.
const leastLoad = 60

// loadOf adds up the sets of some patterns: seconds under load, repetitions.
func (l *placedClass) loadOf(patterns []string) (seconds float64, reps int) {
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		for _, p := range patterns {
			if r.Kind == SetRow && r.Pattern == p {
				seconds, reps = seconds+r.Load, reps+r.Reps
			}
		}
	})
	return seconds, reps
}
