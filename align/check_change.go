package align

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"onphrase/plan"
	"onphrase/plan/say"
)

var changeTooShort = Check{
	Code:     "change-too-short",
	Title:    "there is no time to change weights or to get to the floor",
	Why:      "Half the class is still picking up a bar when the first repetition is counted, and hurries with a weight in the hands.",
	Source:   "8 counts for other weights, 16 to the floor or up: common practice, no source; needs: in a moves file sets your own",
	Severity: Watch,
	Left:     "takes a setup: for the change, or an order that changes less often",
	details: func(c *plan.Catalog) []string {
		var out []string
		for _, kind := range []plan.PauseKind{plan.Weights, plan.Floor, plan.Water} {
			n := c.Needs[kind]
			out = append(out, fmt.Sprintf("%s: %s (%s)", kind, n.Time, n.Source))
		}
		return out
	},
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			if all := l.hurried(p); len(all) > 0 {
				out = append(out, changesTogether(all))
			}
		}
		return out
	},
}

// hurry is a change between two items that has too few counts.
type hurry struct {
	from, to   *placedRow
	what       string // "take light"
	have, need int    // counts
	source     string
}

// hurried lists the changes before items of a part that are too short. What
// comes before the part counts too.
func (l *placedClass) hurried(of *placedPart) []hurry {
	var out []hurry
	var before *placedRow
	gap := 0.0 // seconds since it ended
	l.each(func(p *placedPart, _ int, r *placedRow) {
		if r.item == nil || r.Kind == PauseRow {
			gap += r.Seconds
			return
		}
		if p == of && before != nil && before.item != r.item && r.music != nil {
			if h, ok := l.hurry(before, r, gap); ok {
				out = append(out, h)
			}
		}
		before, gap = r, 0
	})
	return out
}

// hurry judges the change between two items with a gap of some seconds.
func (l *placedClass) hurry(from, to *placedRow, gap float64) (hurry, bool) {
	kind, what := l.change(from.item, to.item)
	need, ok := l.catalog().Needs[kind]
	if !ok {
		return hurry{}, false
	}
	g := to.music.grid
	perSecond := g.bpm * g.speed / 60
	h := hurry{from: from, to: to, what: what, source: need.Source}
	h.have = int(math.Round(gap * perSecond))
	h.need = max(need.Time.Counts, int(math.Ceil(need.Time.Seconds*perSecond/eight))*eight)
	return h, h.have < h.need
}

// change is what must happen between two items: of the floor and the weights
// that which takes longer. What is only put down needs no time of its own.
func (l *placedClass) change(from, to *plan.Item) (kind plan.PauseKind, what string) {
	a, okA := l.needs(from)
	b, okB := l.needs(to)
	switch {
	case !okA || !okB:
		return "", ""
	case a.floor != b.floor && b.floor:
		return plan.Floor, "get to the floor"
	case a.floor != b.floor:
		return plan.Floor, "get up from the floor"
	case b.weight != "" && !a.holds(b.weight):
		return plan.Weights, "take " + b.weight
	case a.weight == "" && b.weight == "":
		for _, k := range b.carried() {
			if !slices.Contains(a.kit, k) {
				return plan.Weights, "take the " + k
			}
		}
	}
	return "", ""
}

// changesTogether makes one finding of the changes of a part.
func changesTogether(all []hurry) Finding {
	h := all[0]
	f := h.to.about(Watch)
	f.Source = h.source
	missing := 0
	var each, ways []string
	for _, h := range all {
		missing += h.need - h.have
		each = append(each, fmt.Sprintf("row %d, %s to %s, usual are %d", h.to.Row.Row, say.Many(h.have, "count"), h.what, h.need))
		if way := fmt.Sprintf("setup: %d counts", h.need); !slices.Contains(ways, way) {
			ways = append(ways, way)
		}
		if h.to.Row.Row != f.Row {
			f.Also = append(f.Also, h.to.Row.Row)
		}
	}
	f.Figures = map[string]float64{
		"counts_given": float64(h.have), "counts_needed": float64(h.need),
		"changes": float64(len(all)), "counts_missing": float64(missing),
	}
	f.Message = fmt.Sprintf("%s after %s: %s to %s, usual are %d", h.to.name(), h.from.name(), say.Many(h.have, "count"), h.what, h.need)
	f.Fix = strings.Join(ways, " or ")
	if less, ok := fewerBy(h.from, h.need-h.have); ok && len(all) == 1 && h.from.music == h.to.music {
		f.Fix += fmt.Sprintf(", and %s of %s before it", less, h.from.Item)
	}
	if len(all) > 1 {
		f.Message = fmt.Sprintf("%d changes have too few counts: %s", len(all), strings.Join(each, "; "))
		f.Fix += " on these items, and as many counts less before each; or an order that changes less often"
	}
	return f
}
