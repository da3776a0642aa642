package outline

import (
	"fmt"
	"math"

	"onphrase/plan"
)

// Section is a part of an outline.
type Section struct {
	Name    string
	Kind    plan.PartKind
	Minutes float64
}

// Least and Most bound the minutes in the studio of a class with parts of its
// own.
const Least, Most = 20, 90

// slack is the time of a slot that stays free for coming in and setting up
// [min]: common practice, no source.
const slack = 2

// outlines are the classes that others are scaled from, by their minutes in
// the studio. Common practice, no source.
var outlines = []struct {
	minutes, rounds int
	warmUp          float64 // [min], like those below
	cardio, work    float64 // of one round
	core, coolDown  float64
}{
	{30, 2, 5, 2.5, 5, 4, 4},
	{45, 3, 8, 2.5, 5.5, 6, 5},
	{60, 4, 10, 3, 5.5, 7, 7},
}

// Sections lists the parts of a class of so many minutes in the studio. Other
// lengths than 30, 45 and 60 minutes are the nearest of them, scaled.
func Sections(minutes int) ([]Section, error) {
	if minutes < Least || minutes > Most {
		return nil, fmt.Errorf("%d minutes are no class: from %d to %d", minutes, Least, Most)
	}
	best := outlines[0]
	for _, o := range outlines {
		if math.Abs(float64(o.minutes-minutes)) < math.Abs(float64(best.minutes-minutes)) {
			best = o
		}
	}
	by := float64(minutes-slack) / float64(best.minutes-slack)
	all := []Section{{"Warm-up", plan.WarmUp, by * best.warmUp}}
	for n := range best.rounds {
		all = append(all,
			Section{fmt.Sprintf("Round %d, strength", n+1), plan.Strength, by * best.work},
			Section{fmt.Sprintf("Round %d, cardio", n+1), plan.Cardio, by * best.cardio})
	}
	return append(all, Section{"Core", plan.Core, by * best.core},
		Section{"Cool-down", plan.CoolDown, by * best.coolDown}), nil
}
