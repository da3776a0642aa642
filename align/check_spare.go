package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

var spareCounts = Check{
	Code:  "spare-counts",
	Title: "an item leaves counts of its phrase empty, or the next one starts inside a phrase",
	Why: "Work that does not fill its phrase ends where the music goes on: the class waits, or the next item " +
		"starts in the middle of a phrase.",
	Source:   "a 32-count phrase is common practice; the counts are the track's own",
	Severity: Watch,
	Left:     "what fills the phrase would cost more than to leave it",
	step: func(j *judge) []Finding {
		var out []Finding
		end := j.to - 1 // how the last row ends, the next item decides
		if j.last() {
			end = j.to
		}
		for i := max(0, j.from-1); i < end; i++ {
			f, next, ok := j.spare(j.part, i, j.now.inside)
			if it := j.part.rows[i].item; ok && it != j.was.across && it != j.now.across { // that says why it ends there
				out = append(out, f)
				j.now.inside = next
			}
		}
		return out
	},
}

// spare judges the end of row i. next is the item that starts inside the
// phrase because of it, if any.
func (l *placedClass) spare(p *placedPart, i int, off *plan.Item) (f Finding, next *plan.Item, ok bool) {
	r := &p.rows[i]
	after := p.after(i)
	switch {
	case r.music == nil || r.past:
		return f, nil, false
	case r.Kind == PauseRow:
		return l.pausedOff(p, i)
	case r.Kind != BlockRow && r.Kind != SetRow:
		return f, nil, false
	case after != nil && after.setup:
		return l.setUp(p, i, off)
	}
	end := r.music.grid.at(r.to)
	if end.count == 1 || end.phrase == 0 {
		return f, nil, false
	}
	grade, then := Watch, ""
	switch {
	case after == nil || after.music != r.music:
		grade, then = Note, "the part ends there"
		if after != nil {
			then = "the track is changed there"
		}
	case after.Kind == HoldRow:
		then = fmt.Sprintf("the class holds for %s", say.Many(after.Counts, "count"))
	case after.item == r.item, after.Kind == IntervalRow, after.Kind == PauseRow:
		return f, nil, false
	case r.item == off, p.stops(i+1) <= r.to+end.left:
		return f, nil, false
	default:
		next = after.item
		then = fmt.Sprintf("%s starts on count %d and runs over the phrase's end", after.name(), end.count)
	}
	f = r.about(grade)
	f.Figures = map[string]float64{"spare_counts": float64(end.left),
		"spare_seconds": (r.music.grid.time(r.to+end.left) - r.upto) / r.music.grid.speed}
	f.Message = fmt.Sprintf("%s ends %s before the end of phrase %d; %s", r.name(), say.Many(end.left, "count"),
		end.phrase, then)
	f.Fix = say.Ways(l.filling(r, end))
	return f, next, true
}

// setUp judges the end of row i and the set-up behind it: what is set up for
// should start where a phrase does, or end with it.
func (l *placedClass) setUp(p *placedPart, i int, off *plan.Item) (f Finding, next *plan.Item, ok bool) {
	r := &p.rows[i]
	first, at, runs := p.startsInside(i)
	if !runs || r.item == off {
		return f, nil, false
	}
	f = r.about(Watch)
	early := at.count - 1
	f.Figures = map[string]float64{"start_count": float64(at.count), "spare_counts": float64(at.left)}
	f.Message = fmt.Sprintf("after %s and %s to set up, %s starts on count %d of phrase %d and runs over its end",
		r.name(), say.Many(p.rows[i+1].Counts, "count"), first.name(), at.count, at.phrase)
	var ways []string
	if less, ok := fewerBy(r, early); ok {
		ways = append(ways, less+" before it")
	}
	f.Fix = say.Ways(append(ways, "on: phrase", fmt.Sprintf("setup: %d counts", p.rows[i+1].Counts+at.left)))
	return f, first.item, true
}

// startsInside reports whether the set or block behind row i, and behind the
// wait for it, starts inside a phrase and runs over its end.
func (p *placedPart) startsInside(i int) (first *placedRow, at position, runs bool) {
	r := &p.rows[i]
	for i++; i < len(p.rows) && p.rows[i].item == nil; i++ {
	}
	if i == len(p.rows) || p.rows[i].music != r.music || p.rows[i].Kind != SetRow && p.rows[i].Kind != BlockRow {
		return nil, at, false
	}
	first = &p.rows[i]
	at = first.music.grid.at(first.from)
	return first, at, at.count != 1 && at.phrase > 0 && p.stops(i) > first.from+at.left
}

// pausedOff judges the end of a pause, row i: what follows should start where a
// phrase does, or end with it.
func (l *placedClass) pausedOff(p *placedPart, i int) (f Finding, next *plan.Item, ok bool) {
	r := &p.rows[i]
	first, at, runs := p.startsInside(i)
	if !runs {
		return f, nil, false
	}
	f = r.about(Watch)
	f.Figures = map[string]float64{"start_count": float64(at.count), "spare_counts": float64(at.left)}
	f.Message = fmt.Sprintf("after %s, %s starts on count %d of phrase %d and runs over its end", r.Item, first.name(),
		at.count, at.phrase)
	f.Fix = fmt.Sprintf("%s: %s; or %s on: phrase", r.Item, endsWithPhrase(r, r.music.grid.at(r.to)), first.Item)
	return f, first.item, true
}

// fewerBy names the repetitions of a set that takes so many counts less.
func fewerBy(r *placedRow, counts int) (string, bool) {
	set, ok := r.item.Work.(plan.Set)
	if !ok {
		return "", false
	}
	sides := set.Sides.Times()
	last := set.Reps[len(set.Reps)-1]
	per := last.Rhythm.Counts() * sides
	if counts%per != 0 || counts/per >= last.N {
		return "", false
	}
	return fmt.Sprintf("%d x %s instead of %d x %s%s", last.N-counts/per, last.Rhythm, last.N, last.Rhythm,
		aSide(sides)), true
}

// after is the row that follows row i, nil at the end of the part.
func (p *placedPart) after(i int) *placedRow {
	if i+1 < len(p.rows) {
		return &p.rows[i+1]
	}
	return nil
}

// stops is the count at which the run of row i ends: what follows each other
// without a wait on one side of the item.
func (p *placedPart) stops(i int) int { return p.rows[p.runEnd(i)-1].to }

// filling lists ways to end where the phrase does, the smallest first. More
// of a rhythm that is too fast is none.
func (l *placedClass) filling(r *placedRow, end position) []string {
	hold := fmt.Sprintf("%s more of hold or pulses", say.Many(end.left, "count"))
	set, ok := r.item.Work.(plan.Set)
	if !ok {
		return []string{fmt.Sprintf("moves for %s more", say.Many(end.left, "count"))}
	}
	sides := set.Sides.Times()
	last := set.Reps[len(set.Reps)-1]
	per := last.Rhythm.Counts() * sides
	var ways []string
	if _, graded := l.tooFast(r); end.left%per == 0 && !graded {
		ways = append(ways, fmt.Sprintf("%d x %s instead of %d x %s%s", last.N+end.left/per, last.Rhythm, last.N,
			last.Rhythm, aSide(sides)))
	}
	if slow, n, ok := split(last, end.left, sides); ok {
		ways = append(ways, fmt.Sprintf("%d x %s, %d x %s%s (the same %s)", n, slow, last.N-n, last.Rhythm,
			aSide(sides), say.Many(last.N, "rep")))
	}
	if over := end.count - 1; over%per == 0 && over/per < last.N {
		ways = append(ways, fmt.Sprintf("%d x %s%s, ending with the phrase before", last.N-over/per, last.Rhythm,
			aSide(sides)))
	}
	ways = append(ways, hold)
	return ways[:min(len(ways), mostWays)]
}

func aSide(sides int) string {
	if sides > 1 {
		return " a side"
	}
	return ""
}

// split keeps the number of repetitions and does n of them in a slower
// rhythm, so that the set becomes longer by spare counts.
func split(reps plan.Reps, spare, sides int) (slow plan.Rhythm, n int, ok bool) {
	for _, t := range ladder[:3] {
		more := (t.Counts() - reps.Rhythm.Counts()) * sides
		if more > 0 && spare%more == 0 && spare/more < reps.N {
			return t, spare / more, true
		}
	}
	return slow, 0, false
}
