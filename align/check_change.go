package align

import (
	"fmt"
	"math"
	"slices"

	"onphrase/plan"
	"onphrase/plan/say"
)

const changeCode = "change-too-short"

var changeTooShort = Check{
	Code:  changeCode,
	Title: "there is no time to change weights or to get to the floor",
	Why: "Half the class is still picking up a bar when the first repetition is counted, and hurries with a " +
		"weight in the hands.",
	Source: "8 counts for other weights, 16 to the floor or up: common practice, no source; needs: in a moves file " +
		"sets your own",
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
			var open, known []hurry
			for _, h := range l.hurried(p) {
				if _, stands := l.class.Stands(changeCode, p.part, h.to.item); stands {
					known = append(known, h)
				} else {
					open = append(open, h)
				}
			}
			for _, all := range [][]hurry{open, known} {
				if len(all) > 0 {
					out = append(out, changesTogether(all))
				}
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
	seconds    float64
	inLead     bool // the time is a lead-in, which has no counts
	source     string
}

// hurried lists the changes before items of a part that are too short. What
// comes before the part counts too.
func (l *placedClass) hurried(of *placedPart) []hurry {
	var out []hurry
	var before *placedRow
	down := false           // the class is on the floor
	gap, lead := 0.0, false // seconds since it ended, some of them a lead-in
	l.each(func(p *placedPart, _ int, r *placedRow) {
		if r.item == nil || r.Kind == PauseRow {
			gap, lead = gap+r.Seconds, lead || r.Kind == LeadIn
			return
		}
		if p == of && before != nil && before.item != r.item && r.music != nil {
			if h, ok := l.hurry(before, r, gap, down); ok {
				h.inLead = lead
				out = append(out, h)
			}
		}
		if n, _ := l.needs(r.item); !n.anywhere {
			down = n.floor
		}
		before, gap, lead = r, 0, false
	})
	return out
}

// hurry judges the change between two items with a gap of some seconds. down
// is where the class is before it.
func (l *placedClass) hurry(from, to *placedRow, gap float64, down bool) (hurry, bool) {
	kind, what := l.change(from.item, to.item, down)
	need, ok := l.catalog().Needs[kind]
	if !ok {
		return hurry{}, false
	}
	g := to.music.grid
	perSecond := g.bpm * g.speed / 60
	h := hurry{from: from, to: to, what: what, source: need.Source, seconds: gap}
	h.have = int(math.Round(gap * perSecond))
	h.need = max(need.Time.Counts, int(math.Ceil(need.Time.Seconds*perSecond/eight))*eight)
	return h, h.have < h.need
}

// change is what must happen between two items: of the floor and the weights
// that which takes longer. What is only put down needs no time of its own.
func (l *placedClass) change(from, to *plan.Item, down bool) (kind plan.PauseKind, what string) {
	a, okA := l.needs(from)
	b, okB := l.needs(to)
	switch {
	case !okA || !okB:
		return "", ""
	case !down && b.floor && !a.between:
		return plan.Floor, "get to the floor"
	case down && !b.floor && !b.anywhere && !b.between && !a.between:
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

// words says how much time there is, what for, and what is usual.
func (h hurry) words() string {
	have := say.Many(h.have, "count")
	switch {
	case h.have == 0:
		have = "no time"
	case h.inLead:
		have = say.Num(h.seconds, 0) + " s"
	}
	return fmt.Sprintf("%s to %s, usual are %s", have, h.what, say.Many(h.need, "count"))
}

// changesTogether makes one finding of the changes of a part.
func changesTogether(all []hurry) Finding {
	h := all[0]
	f := h.to.about(Watch)
	f.Source = h.source
	missing := 0
	var ways []string
	for _, h := range all {
		missing += h.need - h.have
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
	f.Message = fmt.Sprintf("%s after %s: %s", h.to.name(), h.from.name(), h.words())
	f.Fix = say.Or(ways)
	if len(all) > 1 {
		f.Message = fmt.Sprintf("%d changes have too little time; the first, %s", len(all), f.Message)
		f.Fix += " on these items, as many counts less before each; or fewer changes"
		return f
	}
	if less, ok := fewerBy(h.from, h.need-h.have); ok && h.from.music == h.to.music {
		f.Fix += fmt.Sprintf(", and %s of %s before it", less, h.from.Item)
	}
	return f
}
