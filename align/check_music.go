package align

import (
	"fmt"
	"math"
	"slices"

	"onphrase/plan"
	"onphrase/plan/say"
)

var musicEnds = Check{
	Code:  "music-ends-first",
	Title: "the music ends before the work does",
	Why: "The class stands in silence in the middle of a set, or the next song of the list begins under it at " +
		"another tempo.",
	Source:   "the track's own counts and length",
	Severity: Fix,
	Left: "no start, tempo within 5 % or number of repetitions makes the part short enough for the music at a " +
		"price below that of leaving it",
	step: func(j *judge) []Finding {
		if j.was.ended {
			return nil
		}
		rows := j.part.rows
		if j.last() { // of pauses alone it is said once all work is known to have music
			if i := slices.IndexFunc(rows, func(r placedRow) bool { return r.past }); i >= 0 {
				return []Finding{j.part.ended(i)}
			}
			return nil
		}
		i := slices.IndexFunc(rows[j.from:j.to], func(r placedRow) bool { return r.past && r.Kind != PauseRow })
		if i < 0 {
			return nil
		}
		j.now.ended = true
		return []Finding{j.part.ended(j.from + i)}
	},
}

// ended is the finding on row i, the first that the music does not last for.
func (p *placedPart) ended(i int) Finding {
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
	f.Figures = map[string]float64{"missing_seconds": short, "missing_counts": float64(counts),
		"items": float64(len(items))}
	if r.Kind == PauseRow {
		f.Severity = Note
		f.Message = fmt.Sprintf("%s ends %s s before %s is over, in silence", m.ref.File, say.Num(short, 1), r.Item)
		f.Fix = fmt.Sprintf("leave it, or %s s less of it", say.Num(math.Ceil(short), 0))
		return f
	}
	f.Message = fmt.Sprintf("%s ends %s (%s) before the work on it does, during %s", m.ref.File,
		say.Many(counts, "count"), say.Num(short, 1)+" s", r.name())
	f.Fix = say.Ways(p.enough(m, r, last, counts))
	return f
}

// enough lists ways to need fewer counts of the track.
func (p *placedPart) enough(m *music, first, last *placedRow, counts int) []string {
	var ways []string
	g := m.grid
	if first.item == last.item && last.reps != nil {
		per := last.reps.Rhythm.Counts()
		if less := (counts + per - 1) / per; less < last.reps.N {
			ways = append(ways, fmt.Sprintf("%s: %s of %s instead of %d", last.name(),
				say.Many(last.reps.N-less, "rep"), last.Rhythm, last.reps.N))
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
	if way, ok := fewerRounds(first.item, last.item); ok {
		ways = append(ways, way)
	} else if first.item != last.item {
		ways = append(ways, fmt.Sprintf("take items out from %s on", first.Item))
	}
	return append(ways, fmt.Sprintf("add a track to %s", p.part.Name))
}

// fewerRounds leaves out the rounds from that of one item to that of another,
// where they are the last of the same.
func fewerRounds(from, to *plan.Item) (string, bool) {
	if len(from.Rounds) == 0 || len(to.Rounds) == 0 {
		return "", false
	}
	a, b := from.Rounds[0], to.Rounds[0]
	if a.Series || a.N < 2 || a.Of != b.Of || a.Last != b.Last || b.N != b.Last {
		return "", false
	}
	way := fmt.Sprintf("rounds: %d instead of %d", a.N-1, a.Last)
	if a.Of != "" {
		way += " of " + a.Of
	}
	return way, true
}

// name is what a person calls the row.
func (r *placedRow) name() string {
	if r.Side == "" {
		return r.Item
	}
	return r.Item + " " + r.Side
}
