package align

import (
	"onphrase/beat"
	"onphrase/plan"
)

// placer lays the items of one part, keeping where the next may start.
type placer struct {
	*placedPart
	on  int     // the track playing, an index into music; -1 when there is none
	at  float64 // on that track's timeline [s]
	now float64 // class time [s]
}

// placePart lays a part that begins at the given class time [s].
func placePart(p *plan.Part, tracks map[string]beat.Track, begins float64) *placedPart {
	l := &placer{placedPart: &placedPart{part: p, begins: begins}, on: -1, now: begins}
	for _, ref := range p.Tracks {
		l.music = append(l.music, open(p, ref, tracks))
	}
	l.applyStart()
	if first := l.usable(0); first >= 0 {
		l.play(first)
	}
	for i := range p.Items {
		l.place(&p.Items[i])
	}
	l.ends = l.now
	return l.placedPart
}

// open makes a track ready for a part.
func open(p *plan.Part, ref plan.TrackRef, tracks map[string]beat.Track) music {
	m := music{ref: ref}
	t, ok := tracks[ref.File]
	switch {
	case !ok:
		m.problem = "not analysed"
	case t.Problem != "":
		m.problem = t.Problem
	case len(t.Beats) < eight:
		m.problem = "no steady beat found"
	default:
		m.grid = newGrid(&t, p)
		m.start = m.grid.firstTrusted()
	}
	return m
}

// applyStart moves the part's first track to where the class file says.
func (l *placer) applyStart() {
	first := l.usable(0)
	if first < 0 || l.part.Start == (plan.Start{}) {
		return
	}
	m := &l.music[first]
	if i, ok := m.grid.started(l.part.Start); ok {
		m.start = i
	} else {
		l.noStart = true
	}
}

// usable is the first track from i on that can be laid on, or -1.
func (l *placer) usable(i int) int {
	for ; i < len(l.music); i++ {
		if l.music[i].grid != nil {
			return i
		}
	}
	return -1
}

// play starts a track at 0:00: what comes before its first item is a lead-in.
func (l *placer) play(i int) {
	m := &l.music[i]
	l.on, m.zero, m.used = i, l.now, true
	g := m.grid
	start := g.time(m.start)
	if ms(start) > 0 {
		row := Row{Kind: LeadIn, Item: "lead-in", Moves: []Step{}}
		r := placedRow{Row: row, music: m, from: 0, to: m.start, at: 0, upto: start}
		r.Row.Counts = g.steadyCounts(m.start)
		l.add(r)
	}
	l.at = max(0, start)
}

// place lays an item where it fits: on the track playing, else on the next
// track of the part that has room for it. When none has, it goes where the
// least of it comes after the end of the music.
func (l *placer) place(it *plan.Item) {
	if l.on < 0 {
		l.unplaced(it)
		return
	}
	best := l.on
	rows, missing := l.try(it, l.on, l.at)
	for i := l.usable(l.on + 1); i >= 0 && missing > 0; i = l.usable(i + 1) {
		m := &l.music[i]
		if r, miss := l.try(it, i, m.grid.time(m.start)); miss < missing {
			best, rows, missing = i, r, miss
		}
	}
	if best != l.on {
		l.change(best)
	}
	for _, r := range rows {
		l.add(r)
	}
}

// change goes over to another track at once.
func (l *placer) change(i int) {
	m := &l.music[i]
	name := m.grid.track.Title
	if name == "" {
		name = m.ref.File
	}
	l.rows = append(l.rows, placedRow{Row: Row{
		Part: l.part.Name, Track: m.ref.File, Kind: ChangeRow, Item: "change to " + name,
		Placed: true, ClassTime: ms(l.now), CueTime: ms(l.now), Moves: []Step{},
	}, music: m})
	l.play(i)
}

// try works out an item's rows on a track from a time [s] on, and how much
// of them comes after the end of the music [s].
func (l *placer) try(it *plan.Item, on int, at float64) (rows []placedRow, missing float64) {
	m := &l.music[on]
	ready := m.grid.ready(at, it.Setup)
	if l.fresh(on) {
		ready = max(at, m.grid.ready(0, it.Setup)) // the lead-in is time to set up in
	}
	for n, r := range runs(it) {
		start := ready
		if !r.byClock(it) {
			start = m.grid.time(m.grid.next(ready, snapOf(it), r.counts()))
		}
		if start > at+beatError {
			rows = append(rows, m.wait(it, at, start, n == 0))
			at = start
		}
		for _, p := range r {
			row := m.fit(it, p, at, r.byClock(it))
			row.run = n
			rows = append(rows, row)
			at = row.upto
		}
		ready = at
	}
	for _, r := range rows {
		if r.past {
			missing = at - max(m.grid.duration, 0)
		}
	}
	return rows, missing
}

// fresh reports whether no item has been laid on a track yet.
func (l *placer) fresh(on int) bool {
	n := len(l.rows)
	return on != l.on || n == 0 || l.rows[n-1].Kind == LeadIn || l.rows[n-1].Kind == ChangeRow
}

// fit lays a piece on a track at a time [s].
func (m *music) fit(it *plan.Item, p piece, at float64, clock bool) placedRow {
	g := m.grid
	r := placedRow{Row: p.row, item: it, reps: p.reps, music: m, at: at, from: g.index(at), asked: p.seconds}
	switch {
	case clock:
		r.upto = at + p.seconds*g.speed
		r.to = g.index(r.upto)
	case p.seconds > 0:
		r.to = g.until(r.from, p.seconds, snapOf(it))
		r.upto = g.time(r.to)
	default:
		r.to = r.from + p.row.Counts
		r.upto = g.time(r.to)
	}
	r.Row.Counts = r.to - r.from
	r.past = r.to > g.end() && r.upto > g.duration
	return r
}

// wait is the hold before an item.
func (m *music) wait(it *plan.Item, from, to float64, first bool) placedRow {
	g := m.grid
	r := placedRow{Row: Row{Kind: HoldRow, Item: "hold", Moves: []Step{}}, music: m, at: from, upto: to}
	r.from, r.to = g.index(from), g.index(to)
	r.Row.Counts = r.to - r.from
	if first && it.Setup != (plan.Length{}) {
		r.setup, r.Row.Item, r.Row.Line = true, "set up: "+it.Name, it.Pos.Line
	}
	return r
}

// add puts a row at the end of the part.
func (l *placer) add(r placedRow) {
	g := r.music.grid
	p := g.at(r.from)
	r.Part, r.Track, r.Placed = l.part.Name, r.music.ref.File, true
	if r.Kind != LeadIn {
		r.Phrase, r.Count = p.phrase, p.count
	}
	r.TrackTime, r.ClassTime = ms(r.at), ms(l.now)
	l.now = r.music.zero + r.upto/g.speed
	r.Seconds = ms(ms(l.now) - r.ClassTime)
	r.CueTime = r.ClassTime
	l.at, r.music.ends = r.upto, r.upto
	l.rows = append(l.rows, r)
}

// unplaced adds an item for which there is no music: its counts are known,
// its times are not, unless they were given in seconds.
func (l *placer) unplaced(it *plan.Item) {
	for n, r := range runs(it) {
		for _, p := range r {
			row := placedRow{Row: p.row, item: it, run: n, reps: p.reps, asked: p.seconds}
			row.Part, row.ClassTime, row.CueTime = l.part.Name, ms(l.now), ms(l.now)
			row.Seconds = ms(p.seconds)
			l.now += p.seconds
			l.rows = append(l.rows, row)
		}
	}
}
