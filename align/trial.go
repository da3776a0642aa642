package align

import (
	"slices"

	"onphrase/beat"
	"onphrase/plan"
)

// Trial lays the items of one part one after the other, for a search that
// tries others in their place. It lays and judges with the code of Build: the
// tallies of a part laid item by item add up to what Build finds in it of the
// checks in TrialCodes. It is for one goroutine.
type Trial struct {
	*placer
	judge judge
}

// TrialCodes are the checks whose findings on an item depend on nothing but
// the item, where it lies, and the items next to it.
func TrialCodes() []string {
	codes := []string{startMissing.Code}
	for _, c := range itemChecks() {
		codes = append(codes, c.Code)
	}
	return codes
}

// Tally counts the rows that the checks in TrialCodes find something on.
type Tally struct{ Fix, Watch int }

// State is how far a part is laid, and what of it the next item depends on.
type State struct {
	Track          int        // of the part, from 0
	At             float64    // [s] on that track's own timeline
	Count          int        // the first count free
	InPhrase, Left int        // of that count: its number in its phrase, from 1; counts to the end of the phrase
	PerCount       float64    // from count to count, as played [s]
	Waited         int        // counts of hold before the last item, and between its sides
	memory                    // of the judge
	last           *placedRow // the last row
}

// StateKey is equal for spots from which everything that follows is laid and
// judged alike.
type StateKey struct {
	Track int
	At    float64
	Count int
	// the music was over; of the last item: across an odd phrase, inside one, after the music
	ended, across, inside, silent bool
	last                          RowKind
}

// Key is what the future depends on.
func (s State) Key() StateKey {
	k := StateKey{Track: s.Track, At: ms(s.At), Count: s.Count, ended: s.ended}
	if s.last != nil {
		k.across, k.inside = s.across == s.last.item, s.inside == s.last.item
		k.silent, k.last = s.last.past, s.last.Kind
	}
	return k
}

// NewTrial opens the tracks of a part as it plays them; false when none of
// them can be laid on.
func NewTrial(c *plan.Class, p *plan.Part, tracks map[string]beat.Track) (*Trial, bool) {
	t := &Trial{placer: &placer{placedPart: &placedPart{part: p}, on: -1}}
	for _, ref := range p.Tracks {
		t.music = append(t.music, open(p, ref, tracks))
	}
	t.judge = judge{placedClass: &placedClass{class: c, parts: []*placedPart{t.placedPart}}, part: t.placedPart,
		checks: itemChecks()}
	return t, t.usable(0) >= 0
}

// Begin gives the state before the first item of a part that starts there.
func (t *Trial) Begin(start plan.Start) (State, Tally) {
	first := t.usable(0)
	m := &t.music[first]
	var found Tally
	count, ok := m.grid.started(start)
	if !ok {
		count, found.Fix = m.grid.firstTrusted(), 1
	}
	return t.state(State{Track: first, At: max(0, m.grid.time(count))}), found
}

// state fills in where a time lies among the counts.
func (t *Trial) state(s State) State {
	g := t.music[s.Track].grid
	s.Count = g.index(s.At)
	at := g.at(s.Count)
	s.InPhrase, s.Left = at.count, at.left
	s.PerCount = 60 / g.tempo(s.Count, s.Count)
	return s
}

// Next lays one more item. Items that follow each other must be different
// pointers, also where they say the same.
func (t *Trial) Next(from State, it *plan.Item) (State, Tally) {
	t.on, t.at, t.rows = from.Track, from.At, t.rows[:0]
	if from.last != nil {
		t.rows = append(t.rows, *from.last)
	}
	fresh := len(t.rows)
	t.place(it)
	t.judge.now = from.memory
	var found Tally
	t.add(&found, t.judge.step(fresh, len(t.rows)))
	to := State{Track: t.on, At: t.at, memory: t.judge.now}
	for _, r := range t.rows[fresh:] {
		if r.Kind == HoldRow {
			to.Waited += r.Counts
		}
	}
	last := t.rows[len(t.rows)-1]
	to.last = &last
	return t.state(to), found
}

// add counts findings, but those that she stands by.
func (t *Trial) add(n *Tally, all []Finding) {
	for _, f := range all {
		if _, known := t.judge.class.Stands(f.Code, t.part, f.Of); !known {
			n.count(f)
		}
	}
}

func (n *Tally) count(f Finding) {
	switch f.Severity {
	case Fix:
		n.Fix++
	case Watch:
		n.Watch++
	}
}

// Phrases is the number of phrases of the part's first track, as taught.
func (t *Trial) Phrases() int { return len(t.music[t.usable(0)].grid.phrases) - 1 }

// PhraseOf is the phrase, from 1, that a part begins in which starts there.
func (t *Trial) PhraseOf(start plan.Start) int {
	g := t.music[t.usable(0)].grid
	count, ok := g.started(start)
	if !ok {
		count = g.firstTrusted()
	}
	return g.at(count).phrase
}

// Has reports whether the music has the place that a start names.
func (t *Trial) Has(start plan.Start) bool {
	_, ok := t.music[t.usable(0)].grid.started(start)
	return ok
}

// Tempos lists, for every track that can be laid on, the counts a minute as
// taught at the recorded tempo.
func (t *Trial) Tempos() []float64 {
	var all []float64
	for i := range t.music {
		if g := t.music[i].grid; g != nil {
			all = append(all, g.bpm)
		}
	}
	return all
}

// Graded reports whether a rhythm of a set is too fast, or too slow for a
// swing, anywhere on the part's tracks.
func (t *Trial) Graded(s plan.Set, r plan.Rhythm) bool {
	for i := range t.music {
		g := t.music[i].grid
		if g == nil {
			continue
		}
		for _, p := range g.phrases {
			pace, ok := t.judge.paceOf(s, r, g.tempo(p.first, p.first+p.counts))
			if ok && (pace.grade() != "" || pace.sags()) {
				return true
			}
		}
	}
	return false
}

// Slower lists the rhythms that instructors slow one down to, the nearest
// first: the even ones that take at least as many counts, or the same with
// every figure doubled where there are holds in it.
func Slower(r plan.Rhythm) []plan.Rhythm {
	tries := ladder
	if r.Hold > 0 || r.Rest > 0 {
		tries = []plan.Rhythm{scaled(r, 2), scaled(r, 4)}
	}
	var out []plan.Rhythm
	for _, t := range tries {
		if t != r && t.Counts() >= r.Counts() {
			out = append(out, t)
		}
	}
	return out
}

// SameKit reports whether two items are done with the same weights, with the
// same things, on the same level, so that nothing is changed between them.
func SameKit(c *plan.Class, a, b *plan.Item) bool {
	l := &placedClass{class: c}
	x, okX := l.needs(a)
	y, okY := l.needs(b)
	return okX && okY && x.floor == y.floor && x.weight == y.weight && slices.Equal(x.kit, y.kit)
}
