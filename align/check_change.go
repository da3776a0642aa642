package align

import (
	"fmt"
	"math"
)

// Counts that people need between two items. Common practice, no source; a
// class file's setup: asks for more.
const (
	weightsNeed = 8  // to put down one weight and take up another
	floorNeed   = 16 // to get down to the floor or up
)

var changeTooShort = Check{
	Code:     "change-too-short",
	Title:    "there is no time to change weights or to get to the floor",
	Why:      "Half the class is still picking up a bar when the first repetition is counted, and hurries with a weight in the hands.",
	Source:   "8 counts for other weights, 16 to the floor or up: common practice, no source",
	Severity: Watch,
	find: func(l *layout) []Finding {
		var out []Finding
		var before *laid
		gap := 0.0 // seconds since it ended
		l.each(func(_ *partLayout, _ int, r *laid) {
			switch {
			case r.item == nil || r.Kind == PauseRow:
				gap += r.Seconds
				return
			case before != nil && before.item != r.item && r.music != nil:
				if f, ok := l.rushed(before, r, gap); ok {
					out = append(out, f)
				}
			}
			before, gap = r, 0
		})
		return out
	},
}

// rushed judges the change between two items with a gap of some seconds.
func (l *layout) rushed(from, to *laid, gap float64) (Finding, bool) {
	a, okA := l.needs(from.item)
	b, okB := l.needs(to.item)
	if !okA || !okB {
		return Finding{}, false
	}
	need, what := 0, ""
	switch {
	case a.floor != b.floor && b.floor:
		need, what = floorNeed, "get to the floor"
	case a.floor != b.floor:
		need, what = floorNeed, "get up from the floor"
	case b.weight != "" && a.weight != b.weight:
		need, what = weightsNeed, "take "+b.weight
	}
	g := to.music.grid
	have := int(math.Round(gap * g.bpm * g.speed / 60))
	if have >= need {
		return Finding{}, false
	}
	f := to.about(Watch)
	f.Figures = map[string]float64{"counts_given": float64(have), "counts_needed": float64(need), "seconds_given": gap}
	f.Message = fmt.Sprintf("%s after %s: %s to %s, usual are %d", to.name(), from.name(), many(have, "count"), what, need)
	f.Fix = fmt.Sprintf("setup: %d counts", need)
	return f, true
}
