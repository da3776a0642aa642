package align

import (
	"slices"

	"onphrase/plan"
)

// standing parts the findings into those that are open and those that she has
// said she stands by, with her reasons.
func (l *placedClass) standing(all []Finding) (open, known []Finding) {
	open, known = []Finding{}, []Finding{}
	for _, f := range all {
		why, stands := l.stands(f)
		f.Of = nil // it has served
		if stands {
			f.Reason = why.Reason
			known = append(known, f)
		} else {
			open = append(open, f)
		}
	}
	return open, known
}

// stands finds what she has said of a finding. One that holds for several items
// is hers when she has said so of each.
func (l *placedClass) stands(f Finding) (plan.Known, bool) {
	said, ok := l.class.Stands(f.Code, l.partOf(f), f.Of)
	if !ok || len(f.Also) == 0 {
		return said, ok
	}
	l.each(func(p *placedPart, _ int, r *placedRow) {
		if slices.Contains(f.Also, r.Row.Row) {
			_, also := l.class.Stands(f.Code, p.part, r.item)
			ok = ok && also
		}
	})
	return said, ok
}

// partOf is the part that a finding is in, nil for the class.
func (l *placedClass) partOf(f Finding) *plan.Part {
	for _, p := range l.parts {
		first := 0
		if len(p.rows) > 0 {
			first = p.rows[0].Row.Row
		}
		if f.Part == p.part.Name && (f.Row == 0 || f.Row >= first && f.Row < first+len(p.rows)) {
			return p.part
		}
	}
	return nil
}
