package align

import (
	"fmt"

	"onphrase/plan/say"
)

// slack is the share of the slot that may stay free: people come in, set up
// and clear away. Common practice: 2 minutes of 30 to 60; a tenth is already
// a whole part.
const slack = 0.10

var overSlot = Check{
	Code:     "over-slot",
	Title:    "the class is longer than its slot",
	Why:      "The cool-down gets cut, or the next class waits at the door.",
	Source:   "arithmetic on the class's own rows",
	Severity: Fix,
	Left:     "what the class can do without only you know: take out a round or an item",
	find: func(l *placedClass) []Finding {
		over := l.length() - l.class.Slot
		if l.class.Slot == 0 || over < 1 {
			return nil
		}
		f := Finding{Severity: Fix, Line: l.class.Pos.Line}
		f.Figures = map[string]float64{"length_seconds": l.length(), "slot_seconds": l.class.Slot, "over_seconds": over}
		f.Message = fmt.Sprintf("the class lasts %s, %s more than its slot of %s", say.Clock(l.length()),
			say.Clock(over), say.Clock(l.class.Slot))
		f.Fix = "take out or shorten " + l.shed(over)
		return []Finding{f}
	},
}

// shed names the smallest item whose length makes up for that many seconds.
func (l *placedClass) shed(over float64) string {
	var best *placedPart
	var name string
	least := 0.0
	for _, p := range l.parts {
		for i := 0; i < len(p.rows); i++ {
			r := &p.rows[i]
			if r.item == nil {
				continue
			}
			s := 0.0
			for ; i < len(p.rows) && p.rows[i].item == r.item; i++ {
				s += p.rows[i].Seconds
			}
			i--
			if s >= over && (best == nil || s < least) {
				best, name, least = p, r.Item, s
			}
		}
	}
	if best == nil {
		return say.Clock(over) + " of work"
	}
	return fmt.Sprintf("%s of %s (%s)", name, best.part.Name, say.Clock(least))
}

var underSlot = Check{
	Code:     "under-slot",
	Title:    "the class leaves much of its slot empty",
	Why:      "People have come for the whole time; a tenth of it is a part of the class.",
	Source:   "common practice: about two minutes of slack for setting up",
	Severity: Watch,
	Left:     "what to do with the time only you know: another round, or more of a part",
	find: func(l *placedClass) []Finding {
		spare := l.class.Slot - l.length()
		if l.class.Slot == 0 || spare <= slack*l.class.Slot || l.untimed() {
			return nil
		}
		f := Finding{Severity: Watch, Line: l.class.Pos.Line}
		f.Figures = map[string]float64{"length_seconds": l.length(), "slot_seconds": l.class.Slot,
			"spare_seconds": spare}
		f.Message = fmt.Sprintf("the class lasts %s and leaves %s of its slot of %s", say.Clock(l.length()),
			say.Clock(spare), say.Clock(l.class.Slot))
		f.Fix = fmt.Sprintf("%s more work, or another round", say.Clock(spare))
		return []Finding{f}
	},
}

// untimed reports whether some of the class has no time, its music missing.
func (l *placedClass) untimed() bool {
	found := false
	l.each(func(_ *placedPart, _ int, r *placedRow) { found = found || r.music == nil })
	return found
}
