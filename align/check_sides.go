package align

import (
	"fmt"
	"slices"

	"onphrase/plan"
	"onphrase/plan/say"
)

var sidesUnequal = Check{
	Code:     "sides-unequal",
	Title:    "right and left do not get the same work",
	Why:      "One side is trained more than the other, and people notice.",
	Source:   "arithmetic on the class's own rows",
	Severity: Watch,
	Left:     "only you know the side that is meant",
	find: func(l *placedClass) []Finding {
		totals := map[string]*sides{}
		var names []string
		l.each(func(_ *placedPart, _ int, r *placedRow) {
			if r.item == nil || r.Side == "" {
				return
			}
			name := l.moveOf(r)
			t := totals[name]
			if t == nil {
				t = &sides{counts: map[string]int{}, reps: map[string]int{}}
				totals[name] = t
				names = append(names, name)
			}
			t.last = r
			t.counts[r.Side] += r.Counts
			t.reps[r.Side] += r.Reps
		})
		slices.Sort(names)
		var out []Finding
		for _, n := range names {
			if f, ok := totals[n].unequal(n); ok {
				out = append(out, f)
			}
		}
		return out
	},
}

// sides adds up one move's work by side.
type sides struct {
	counts, reps map[string]int
	last         *placedRow
}

func (t *sides) unequal(name string) (Finding, bool) {
	const right, left = string(plan.Right), string(plan.Left)
	if t.counts[right] == t.counts[left] {
		return Finding{}, false
	}
	f := t.last.about(Watch)
	f.Figures = map[string]float64{
		"right_counts": float64(t.counts[right]), "left_counts": float64(t.counts[left]),
		"right_reps": float64(t.reps[right]), "left_reps": float64(t.reps[left]),
	}
	f.Message = fmt.Sprintf("%s: %s right, %s left in the whole class", name, say.Many(t.counts[right], "count"),
		say.Many(t.counts[left], "count"))
	less, by := left, t.counts[right]-t.counts[left]
	if by < 0 {
		less, by = right, -by
	}
	f.Fix = fmt.Sprintf("%s more on the %s", say.Many(by, "count"), less)
	if sidesOf(t.last.item) != plan.Both {
		f.Fix = "sides: both; or " + f.Fix
	}
	return f, true
}

// moveOf is the name under which a row's work is added up, one for all the
// names of a move.
func (l *placedClass) moveOf(r *placedRow) string {
	name, ok := moveName(r.item)
	if !ok {
		return "block " + r.Item
	}
	if m, ok := l.move(name); ok {
		return m.Name
	}
	return name
}

// sidesOf is what an item says of its sides.
func sidesOf(it *plan.Item) plan.Sides {
	switch w := it.Work.(type) {
	case plan.Set:
		return w.Sides
	case plan.Interval:
		return w.Sides
	case plan.Block:
		return w.Sides
	}
	return plan.NoSides
}
