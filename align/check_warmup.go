package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

// easyShare is the first part of a warm-up in which nothing may jump.
// Common practice, no source: small to large range, low impact first.
const easyShare = 1.0 / 3

var warmUpJump = Check{
	Code:     "warm-up-steep",
	Title:    "the warm-up starts too high",
	Why:      "Joints and breath need the first minutes small and low; jumps and weights come after them.",
	Source:   "small to large range and low impact first: common practice, no source; effort rising over 8-12 minutes",
	Severity: Watch,
	Left:     "the order of the warm-up is for you to change",
	find: func(l *placedClass) []Finding {
		for _, p := range l.parts {
			if p.part.Kind == plan.WarmUp {
				return l.steep(p)
			}
		}
		return nil
	},
}

// steep looks for the first thing in the first third of a warm-up that jumps,
// is done with a weight, or goes over its full range at once.
func (l *placedClass) steep(p *placedPart) []Finding {
	until := p.begins + easyShare*(p.ends-p.begins)
	var out []Finding
	l.eachMove(func(r *placedRow, name string, _ int, _ float64) {
		if len(out) > 0 || r.Part != p.part.Name || r.ClassTime >= until || r.ClassTime < p.begins {
			return
		}
		m, _ := l.move(name)
		what, grade := "", Watch
		switch {
		case m.Impact == plan.HighImpact:
			what = "has high impact"
		case r.Weight != "":
			what = "is done with " + r.Weight
		case r.Range == plan.FullRange && m.Class != "":
			what, grade = "goes over its full range", Note
		default:
			return
		}
		f := r.about(grade)
		f.Figures = map[string]float64{"seconds_into_warm_up": r.ClassTime - p.begins, "easy_seconds": until - p.begins}
		f.Message = fmt.Sprintf("%s %s, %s into the warm-up", name, what, say.Clock(r.ClassTime-p.begins))
		f.Fix = fmt.Sprintf("move it behind the first third (%s); or a smaller version of it",
			say.Clock(until-p.begins))
		out = append(out, f)
	})
	return out
}
