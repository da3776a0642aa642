package align

import "onphrase/plan"

// leads works out which leg leads each move of a block. A pass with a side
// starts on it; without, the first pass starts right, as is common practice,
// and every other one where the last ended.
func (l *placedClass) leads() {
	for _, p := range l.parts {
		lead := plan.Right
		for i := range p.rows {
			r := &p.rows[i]
			if r.Kind != BlockRow {
				continue
			}
			switch {
			case r.Side != "":
				lead = plan.Sides(r.Side)
			case r.Pass == 1:
				lead = plan.Right
			}
			for j := range r.Moves {
				s := &r.Moves[j]
				s.Lead = string(lead)
				if l.switches(*s) {
					lead = other(lead)
				}
			}
			r.EndLead = string(lead)
		}
	}
}

// switches reports whether a step ends on the other leg: an odd number of
// repetitions of a move that changes the lead.
func (l *placedClass) switches(s Step) bool {
	m, ok := l.move(s.Move)
	return ok && m.Switches && m.Counts > 0 && s.Counts/m.Counts%2 == 1
}

func other(s plan.Sides) plan.Sides {
	if s == plan.Right {
		return plan.Left
	}
	return plan.Right
}
