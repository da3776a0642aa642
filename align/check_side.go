package align

import (
	"fmt"
	"slices"
	"strings"

	"onphrase/plan"
	"onphrase/plan/say"
)

var sideMissing = Check{
	Code:     "side-not-named",
	Title:    "a one-sided move names no side",
	Why:      "Nobody has decided when the other side comes, so it is forgotten or gets less.",
	Source:   "one-sided moves in the catalogue: common practice, no source",
	Severity: Watch,
	Left:     "only you know the side that is meant",
	find: func(l *placedClass) []Finding {
		var f Finding
		var names []string
		l.each(func(_ *placedPart, _ int, r *placedRow) {
			name, ok := l.oneSided(r)
			if !ok || slices.Contains(names, name) {
				return
			}
			if names = append(names, name); len(names) == 1 {
				f = r.about(Watch)
			} else {
				f.Also = append(f.Also, r.Row.Row)
			}
		})
		if len(names) == 0 {
			return nil
		}
		f.Figures = map[string]float64{"moves": float64(len(names))}
		f.Message = names[0] + " works one side and names none"
		if len(names) > 1 {
			f.Message = fmt.Sprintf("%s work one side each and name none", strings.Join(names, ", "))
		}
		f.Fix = "sides: both, and half the time or reps where it should last as long as now"
		return []Finding{f}
	},
}

// oneSided is the move of a set or interval that works one side and does not
// say which.
func (l *placedClass) oneSided(r *placedRow) (string, bool) {
	if r.item == nil || r.Side != "" {
		return "", false
	}
	name, _ := moveName(r.item)
	m, ok := l.move(name)
	return m.Name, ok && m.OneSided
}

var alternatingOdd = Check{
	Code:     "odd-reps-in-turn",
	Title:    "a move done right and left in turn ends one short",
	Why:      "One leg or arm gets one repetition more than the other.",
	Source:   "arithmetic on the repetitions",
	Severity: Note,
	Left:     "a note: one repetition more or fewer is left to you",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			for i := 0; i < len(p.rows); {
				r, j := &p.rows[i], p.runEnd(i)
				reps := 0
				for _, row := range p.rows[i:j] {
					reps += row.Reps
				}
				i = j
				if r.reps == nil || r.Side != "" || reps%2 == 0 {
					continue
				}
				set, _ := r.item.Work.(plan.Set)
				if m, ok := l.move(set.Move); !ok || !m.Switches {
					continue
				}
				f := r.about(Note)
				f.Figures = map[string]float64{"reps": float64(reps)}
				f.Message = fmt.Sprintf("%s: %s in turn are %d on one side and %d on the other", r.Item,
					say.Many(reps, "rep"), (reps+1)/2, reps/2)
				f.Fix = fmt.Sprintf("%d or %d reps", reps-1, reps+1)
				out = append(out, f)
			}
		}
		return out
	},
}
