package align

import (
	"fmt"

	"onphrase/plan"
)

var musicEnds = Check{
	Code:     "music-ends-first",
	Title:    "the music ends before the work does",
	Why:      "The class stands in silence in the middle of a set, or the next song of the list begins under it at another tempo.",
	Source:   "the track's own counts and length",
	Severity: Fix,
	find: func(l *layout) []Finding {
		var out []Finding
		for _, p := range l.parts {
			for i := range p.rows {
				if r := &p.rows[i]; r.past {
					out = append(out, p.ended(i))
					break
				}
			}
		}
		return out
	},
}

// ended is the finding on row i, the first that the music does not last for.
func (p *partLayout) ended(i int) Finding {
	r, m := &p.rows[i], p.rows[i].music
	g := m.grid
	f := r.about(Fix)
	last := r
	items := map[*plan.Item]bool{}
	for j := i; j < len(p.rows); j++ {
		if p.rows[j].music == m {
			last = &p.rows[j]
			items[last.item] = true
		}
	}
	delete(items, nil)
	short := (last.upto - g.duration) / g.speed
	counts := last.to - g.end()
	f.Figures = map[string]float64{"missing_seconds": short, "missing_counts": float64(counts), "items": float64(len(items))}
	f.Message = fmt.Sprintf("%s ends %s (%s) before the work on it does, during %s", m.ref.File, many(counts, "count"), num(short, 1)+" s", r.name())
	f.Fix = or(p.enough(m, r, last, counts))
	return f
}

// enough lists ways to need fewer counts of the track.
func (p *partLayout) enough(m *music, first, last *laid, counts int) []string {
	var ways []string
	g := m.grid
	if first.item == last.item && last.reps != nil {
		per := last.reps.Rhythm.Counts()
		if less := (counts + per - 1) / per; less < last.reps.N {
			ways = append(ways, fmt.Sprintf("%s: %s of %s instead of %d", last.name(), many(last.reps.N-less, "rep"), last.Rhythm, last.reps.N))
		}
	}
	if at := g.at(m.start).phrase; at > 1 {
		for n := at - 1; n >= 1; n-- {
			if m.start-g.phrases[n].first >= counts {
				ways = append(ways, fmt.Sprintf("start: phrase %d", n))
				break
			}
		}
	}
	if first.item != last.item {
		ways = append(ways, fmt.Sprintf("take items out from %s on", first.name()))
	}
	return append(ways, fmt.Sprintf("add a track to %s", p.part.Name))
}

// name is what a person calls the row.
func (r *laid) name() string {
	if r.Side == "" {
		return r.Item
	}
	return r.Item + " " + r.Side
}
