package align

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

// The bands are our reading of published figures that disagree; their sources
// stand beside each band.
func TestSuits(t *testing.T) {
	tests := []struct {
		bpm  float64
		want []plan.PartKind
	}{
		{0, nil},
		{96, []plan.PartKind{plan.CoolDown, plan.Stretch}},
		{110, []plan.PartKind{plan.Core}},
		{121.96, []plan.PartKind{plan.WarmUp, plan.Cardio, plan.Strength, plan.Core}}, // shown as 122.0
		{128, []plan.PartKind{plan.WarmUp, plan.Cardio, plan.Strength, plan.Core}},
		{138, []plan.PartKind{plan.Cardio}},
		{170, nil},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, Suits(tt.bpm, plan.Builtin())); diff != "" {
			t.Errorf("Suits(%v): -want +got\n%s", tt.bpm, diff)
		}
	}
	if len(kindsInOrder) != len(plan.Builtin().Bands) {
		t.Errorf("%d kinds are listed, %d have a band", len(kindsInOrder), len(plan.Builtin().Bands))
	}
}
