package align

import (
	"slices"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
)

// A part laid item by item comes to lie where Build lays it, and the tallies
// add up to what Build finds.
func TestTrialAgreesWithBuild(t *testing.T) {
	parts := 0
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		for i := range c.Parts {
			one := &plan.Class{Name: c.Name, Parts: c.Parts[i : i+1], Catalog: c.Catalog}
			trial, ok := NewTrial(one, &one.Parts[0], tracks)
			if !ok {
				continue
			}
			parts++
			state, sum := trial.Begin(one.Parts[0].Start)
			for k := range one.Parts[0].Items {
				var found Tally
				state, found = trial.Next(state, &one.Parts[0].Items[k])
				sum.Fix, sum.Watch = sum.Fix+found.Fix, sum.Watch+found.Watch
			}
			if want := tallied(Build(one, tracks)); sum != want {
				t.Errorf("%s: %+v, Build finds %+v", one.Parts[0].Name, sum, want)
			}
			rows := placeClass(one, tracks).parts[0].rows
			if last := rows[len(rows)-1]; ms(last.upto) != ms(state.At) {
				t.Errorf("%s ends at %.3f, Build ends it at %.3f", one.Parts[0].Name, state.At, last.upto)
			}
		}
	})
	if parts < trials/2 {
		t.Errorf("only %d parts could be compared", parts)
	}
}

// tallied counts the rows that Build finds something on.
func tallied(m *CountMap) Tally {
	var n Tally
	for _, f := range m.Findings {
		if !slices.Contains(TrialCodes(), f.Code) {
			continue
		}
		for range 1 + len(f.Also) {
			n.count(f)
		}
	}
	return n
}
