package align

import (
	"slices"

	"onphrase/plan"
)

// How early an item is announced [counts]: enough to hear, understand and
// finish what is being done. Common practice, no source for the figures;
// published advice runs from 2 to 8.
const (
	cueMove   = 4 // another move, rhythm, side or hold
	cueChange = 8 // other weights, or from standing to the floor and back
)

// cues gives every row the moment at which to announce it.
func (l *placedClass) cues() {
	var before *plan.Item
	for _, p := range l.parts {
		for i := range p.rows {
			r := &p.rows[i]
			if r.music == nil || r.Kind == LeadIn || r.Kind == ChangeRow {
				continue
			}
			next := r.item
			if r.setup { // the wait is where the change happens
				next = p.nextItem(i)
			}
			r.CueCounts = cueMove
			if next != nil && next != before && l.changes(before, next) {
				r.CueCounts = cueChange
			}
			if next != nil {
				before = next
			}
			r.CueCounts = r.clearOf(p.before(i))
			r.CueTime = ms(r.cueAt())
		}
	}
}

// cueLeast is the latest cue that still helps, for a move people know
// [counts].
const cueLeast = 2

// clearOf shortens a cue that would fall on count 1 of the work before it, or
// earlier: nobody hears the next move while starting this one.
func (r *placedRow) clearOf(before *placedRow) int {
	if before == nil || before.music != r.music || !before.Kind.Work() {
		return r.CueCounts
	}
	if room := r.from - before.from - 1; room < r.CueCounts {
		return max(cueLeast, room)
	}
	return r.CueCounts
}

// before is the row before row i, nil at the beginning of the part.
func (p *placedPart) before(i int) *placedRow {
	if i == 0 {
		return nil
	}
	return &p.rows[i-1]
}

// cueAt is the class time of the row's cue [s], never before the class.
func (r *placedRow) cueAt() float64 {
	g := r.music.grid
	early := r.at - g.time(r.from-r.CueCounts)
	if early <= 0 { // between counts, by the clock
		early = float64(r.CueCounts) * g.period
	}
	return max(0, r.music.zero+(r.at-early)/g.speed)
}

func (p *placedPart) nextItem(i int) *plan.Item {
	for ; i < len(p.rows); i++ {
		if p.rows[i].item != nil {
			return p.rows[i].item
		}
	}
	return nil
}

// changes reports whether people must pick up or put down something, or get
// to the floor or up, between two items.
func (l *placedClass) changes(from, to *plan.Item) bool {
	if to.Setup != (plan.Length{}) {
		return true
	}
	if from == nil {
		return false
	}
	a, okA := l.needs(from)
	b, okB := l.needs(to)
	return okA && okB && (a.floor != b.floor || a.weight != b.weight || !slices.Equal(a.carried(), b.carried()))
}

// move looks a move up in the class's catalogue.
func (l *placedClass) move(name string) (plan.Move, bool) { return l.catalog().Find(name) }

// moveName is the move of a set or of timed work, as written; not ok for an item
// that has none or several.
func moveName(it *plan.Item) (name string, ok bool) {
	switch w := it.Work.(type) {
	case plan.Set:
		return w.Move, true
	case plan.Interval:
		return w.Move, true
	}
	return "", false
}

// catalog is the moves and figures that the class goes by.
func (l *placedClass) catalog() *plan.Catalog {
	if l.class.Catalog == nil {
		return plan.Builtin()
	}
	return l.class.Catalog
}
