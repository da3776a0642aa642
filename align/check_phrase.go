package align

import (
	"fmt"

	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/say"
)

var oddPhrase = Check{
	Code:  "odd-phrase",
	Title: "an item runs across a tag, a bridge or another odd phrase",
	Why: "The music starts a new phrase in the middle of the work: people hear count 1 where the set has not " +
		"got it, and the cueing is off until it ends.",
	Source:   "the track's own list of phrases; a 32-count phrase is common practice",
	Severity: Fix,
	Left:     "everywhere else it would run across an odd phrase too, or leave more behind than it mends",
	step: func(j *judge) []Finding {
		var out []Finding
		for i := j.from; i < j.to; {
			end := j.part.runEnd(i)
			if f, ok := j.part.crosses(i, end); ok {
				out = append(out, f)
				j.now.across = j.part.rows[i].item
			}
			i = end
		}
		return out
	},
}

// runEnd is the row after the last that belongs to the same run as row i.
func (p *placedPart) runEnd(i int) int {
	j := i + 1
	for ; j < len(p.rows); j++ {
		a, b := &p.rows[i], &p.rows[j]
		if a.item == nil || a.item != b.item || a.run != b.run {
			break
		}
	}
	return j
}

// crosses judges the rows from i to before j, laid without a wait.
func (p *placedPart) crosses(i, j int) (Finding, bool) {
	r, end := &p.rows[i], p.rows[j-1].to
	if r.music == nil || !r.Kind.Work() || r.Kind == PauseRow {
		return Finding{}, false
	}
	g := r.music.grid
	n, odd := g.oddInside(r.from, min(end, g.end()))
	if !odd {
		return Finding{}, false
	}
	ph := g.phrases[n]
	torn := ph.counts%eight != 0
	if r.Kind == IntervalRow && !torn {
		return Finding{}, false
	}
	f := r.about(crossing(r.Kind, torn, ph.trust))
	into := ph.first + ph.counts - r.from // counts of the item before the next phrase starts
	f.Figures = map[string]float64{
		"phrase": float64(n), "phrase_counts": float64(ph.counts), "counts_before_next_phrase": float64(into),
		"counts": float64(end - r.from),
	}
	f.Message = fmt.Sprintf("%s runs across phrase %d, %s; phrase %d starts after %d of its %s",
		r.name(), n, oddWords(ph.counts), n+1, into, say.Many(end-r.from, "count"))
	f.Fix = say.Ways(p.around(r, n, end-r.from))
	return f, true
}

func crossing(k RowKind, torn bool, trust float64) Severity {
	switch {
	case k == IntervalRow:
		return Note
	case torn && trust >= trusted:
		return Fix
	}
	return Watch
}

// oddInside is the first odd phrase that ends between two counts; one that
// tears the eights goes before one that does not.
func (g *grid) oddInside(from, to int) (n int, ok bool) {
	first := 0
	for n := 1; n < len(g.phrases); n++ {
		p := g.phrases[n]
		end := p.first + p.counts
		if end <= from || end >= to || p.counts%beat.PhraseLen == 0 {
			continue
		}
		if p.counts%eight != 0 {
			return n, true
		}
		if first == 0 {
			first = n
		}
	}
	return first, first > 0
}

// oddWords names an odd phrase.
func oddWords(counts int) string {
	switch k := beat.KindOf(counts); k {
	case beat.Tag:
		return fmt.Sprintf("a tag of %s", say.Many(counts, "count"))
	case beat.Bridge:
		return fmt.Sprintf("a bridge of %s", say.Many(counts, "count"))
	default:
		return fmt.Sprintf("a %s one of %s", k, say.Many(counts, "count"))
	}
}

// around lists ways to keep an item of so many counts clear of odd phrase n.
func (p *placedPart) around(r *placedRow, n, counts int) []string {
	var ways []string
	g := r.music.grid
	if m, ok := g.unbroken(r.from, counts); ok {
		wait := g.phrases[m].first - r.from
		first := say.Many(wait, "count") + " of hold first"
		if wait > beat.PhraseLen {
			first = "the next that holds it unbroken; other work first"
		}
		ways = append(ways, fmt.Sprintf("start it on phrase %d (%s)", m, first))
	}
	before := g.phrases[n].first - r.from // counts of the item before the odd phrase
	set, ok := r.item.Work.(plan.Set)
	if !ok || before <= 0 || before >= counts {
		if len(ways) == 0 {
			return []string{"other music here"}
		}
		return ways
	}
	per := set.Reps[0].Rhythm.Counts()
	if len(set.Reps) == 1 && before%per == 0 {
		ways = append(ways, fmt.Sprintf("stop it after %s, hold the %s, do the other %d on phrase %d",
			say.Many(before/per, "rep"), say.Many(g.phrases[n].counts, "count"), set.Reps[0].N-before/per, n+1))
	}
	return append(ways, fmt.Sprintf("at most %s", say.Many(before, "count")))
}

// unbroken is the first phrase from a count on that so many counts can start
// on without crossing an odd one.
func (g *grid) unbroken(from, counts int) (n int, ok bool) {
	for n := 1; n < len(g.phrases); n++ {
		first := g.phrases[n].first
		if first <= from || first+counts > g.end() {
			continue
		}
		if _, odd := g.oddInside(first, first+counts); !odd {
			return n, true
		}
	}
	return 0, false
}
