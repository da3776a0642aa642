package align

import (
	"math"

	"onphrase/plan"
)

// kindsInOrder are the kinds of part that have a usual tempo, in the order of
// a class.
var kindsInOrder = []plan.PartKind{plan.WarmUp, plan.Cardio, plan.Strength, plan.Core, plan.CoolDown, plan.Stretch}

// Suits lists the kinds of part whose usual tempo music of that many counts a
// minute has, in the order of a class. c has the bands. It judges the tempo and nothing else.
func Suits(bpm float64, c *plan.Catalog) []plan.PartKind {
	bpm = math.Round(bpm*10) / 10
	var kinds []plan.PartKind
	for _, kind := range kindsInOrder {
		if bpm > 0 && c.Bands[kind].Inside.Has(bpm) {
			kinds = append(kinds, kind)
		}
	}
	return kinds
}
