package align

import (
	"fmt"
	"slices"

	"onphrase/plan"
	"onphrase/plan/say"
)

// wholeClass is the length, or the slot, from which something is a class with a
// beginning and an end of its own [s], and not a piece of one.
const wholeClass = 20 * 60

var partMissing = Check{
	Code:  "part-missing",
	Title: "the class has no warm-up or no cool-down",
	Why:   "People come in cold, from a desk, and go out into their day: both ends belong to the class.",
	Source: "parts of a class after EuropeActive Essentials: warm-up, cardio, muscular, stretch and cool-down; " +
		"\"no strict standard\"",
	Severity: Watch,
	Left:     "which exercises to begin and to end with only you know: write the part",
	find: func(l *placedClass) []Finding {
		if max(l.length(), l.class.Slot) < wholeClass {
			return nil
		}
		var out []Finding
		for _, want := range []struct {
			name  string
			kinds []plan.PartKind
		}{
			{"warm-up", []plan.PartKind{plan.WarmUp}},
			{"cool-down or stretch", []plan.PartKind{plan.CoolDown, plan.Stretch}},
		} {
			if slices.ContainsFunc(l.parts, func(p *placedPart) bool {
				return slices.Contains(want.kinds,
					p.part.Kind)
			}) {
				continue
			}
			f := Finding{Severity: Watch, Line: l.class.Pos.Line}
			f.Figures = map[string]float64{"length_seconds": l.length()}
			f.Message = fmt.Sprintf("none of the %s is a %s", say.Many(len(l.parts), "part"), want.name)
			f.Fix = fmt.Sprintf("kind: %s on the part that is one; or add it", want.kinds[0])
			out = append(out, f)
		}
		return out
	},
}

var partOrder = Check{
	Code:     "part-order",
	Title:    "work comes before the warm-up or after the cool-down",
	Why:      "Effort rises to the middle of a class and falls to its end; a set behind the stretch starts cold.",
	Source:   "common practice, no source",
	Severity: Watch,
	Left:     "the order of the parts is for you to change",
	find: func(l *placedClass) []Finding {
		var out []Finding
		first := slices.IndexFunc(l.parts, func(p *placedPart) bool { return p.part.Kind == plan.WarmUp })
		if first > 0 {
			out = append(out, l.misplaced(first, "is not the first part: %s comes before it", l.parts[first-1]))
		}
		cooled := -1
		for i, p := range l.parts {
			if calm(p.part.Kind) {
				cooled = i
			} else if cooled >= 0 {
				return append(out, l.misplaced(cooled, "is not the end: %s comes after it", p))
			}
		}
		return out
	},
}

func (l *placedClass) misplaced(i int, how string, other *placedPart) Finding {
	p := l.parts[i]
	f := p.about(Watch, p.part.Pos.Line)
	f.Figures = map[string]float64{"part": float64(i + 1), "parts": float64(len(l.parts))}
	f.Message = p.part.Name + " " + fmt.Sprintf(how, other.part.Name)
	f.Fix = "change their order; or give one of them another kind"
	return f
}
