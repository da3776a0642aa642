package align

import (
	"fmt"
	"slices"
	"strings"

	"onphrase/plan"
)

var leadUneven = Check{
	Code:  "lead-uneven",
	Title: "a block does not come round to the other lead by itself",
	Why: "Moves that end on the other foot switch the lead. After an odd number of switches the next pass " +
		"starts on the other leg; after an even number it does not, and the change must be said and shown.",
	Source:   "parity of the switches in the catalogue of moves; common practice, no source",
	Severity: Note,
	Left:     "choreography is for you to change",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			for i := range p.rows {
				if f, ok := l.uneven(p, i); ok {
					out = append(out, f)
				}
			}
		}
		return out
	},
}

// uneven judges a block at its last pass.
func (l *placedClass) uneven(p *placedPart, i int) (Finding, bool) {
	r := &p.rows[i]
	b, ok := blockOf(r)
	if !ok || r.Pass != r.Passes || !l.hasLead(b) {
		return Finding{}, false
	}
	n := 0
	for _, s := range r.Moves {
		if l.switches(s) {
			n++
		}
	}
	f := r.about(Note)
	f.Figures = map[string]float64{"lead_changes_per_pass": float64(n), "passes": float64(r.Passes)}
	stuck := p.stuck(i)
	switch {
	case b.Sides == plan.Both && len(stuck) > 0:
		f.Message = fmt.Sprintf("%s ends on the leg it started on; between its sides the lead must be changed by a cue",
			r.Item)
		if r.Stages > 1 {
			f.Message = fmt.Sprintf("%s, %s: ends on the leg it started on; between its sides the lead must be "+
				"changed by a cue", r.Item, stagesOf(stuck))
		}
		f.Fix = "a tap instead of the last step; or one more move that ends on the other foot"
	case b.Sides == plan.NoSides && n%2 == 1 && r.Passes%2 == 1:
		f.Message = fmt.Sprintf("%s ends on the %s lead, and what comes next starts there", r.Item, r.EndLead)
		f.Fix = fmt.Sprintf("times: %d brings it back; or sides: both", b.Times+1)
	default:
		return Finding{}, false
	}
	return f, true
}

// stuck lists the stages of the block that ends with row i in which a pass
// does not end on the lead that the next one needs.
func (p *placedPart) stuck(i int) []string {
	var stages []string
	next := &p.rows[i]
	for ; next.Pass > 1 && i > 0; i-- {
		r := &p.rows[i-1]
		if r.Kind != BlockRow { // a hold between the two
			continue
		}
		if name := fmt.Sprint(r.Stage); r.EndLead != next.Side && !slices.Contains(stages, name) {
			stages = append(stages, name)
		}
		next = r
	}
	slices.Sort(stages)
	return stages
}

// stagesOf names stages: stage 2; stages 1, 2 and 3.
func stagesOf(all []string) string {
	last := len(all) - 1
	if last == 0 {
		return "stage " + all[0]
	}
	return fmt.Sprintf("stages %s and %s", strings.Join(all[:last], ", "), all[last])
}

func blockOf(r *placedRow) (plan.Block, bool) {
	if r.item == nil || r.Kind != BlockRow {
		return plan.Block{}, false
	}
	b, ok := r.item.Work.(plan.Block)
	return b, ok
}

// hasLead reports whether the lead matters in a block: some move switches it.
func (l *placedClass) hasLead(b plan.Block) bool {
	for _, s := range b.Moves {
		if m, ok := l.move(s.Move); ok && m.Switches {
			return true
		}
	}
	return false
}
