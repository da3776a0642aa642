package align

import (
	"math"

	"onphrase/beat"
	"onphrase/plan"
)

// Build lays a class on its tracks and checks it. The tracks are given by
// TrackRef.File as written. A track that is missing or could not be analysed
// never stops the rest: its rows have no place and a finding says why.
func Build(c *plan.Class, tracks map[string]beat.Track) *CountMap {
	l := placeClass(c, tracks)
	m := &CountMap{Class: c.Name, Slot: ms(c.Slot), Length: ms(l.length()), Parts: []Part{}, Rows: []Row{}}
	for _, p := range l.parts {
		m.Parts = append(m.Parts, p.summary())
		for i := range p.rows {
			m.Rows = append(m.Rows, p.rows[i].whole())
		}
	}
	m.Findings, m.Known = l.check()
	m.Summary, m.Facing = l.summary(), string(c.Facing)
	return m
}

// whole is the row with no list missing.
func (r *placedRow) whole() Row {
	row := r.Row
	row.Moves, row.Rounds, row.Marks = list(row.Moves), list(row.Rounds), list(row.Marks)
	for i := range row.Moves {
		row.Moves[i].With = list(row.Moves[i].With)
	}
	return row
}

// ms rounds seconds to the millisecond.
func ms(seconds float64) float64 { return math.Round(seconds*1000) / 1000 }

// placedClass is a class laid on its music, with all that the checks look at.
type placedClass struct {
	class *plan.Class
	parts []*placedPart
}

// placedPart is one part of it.
type placedPart struct {
	part   *plan.Part
	music  []music
	rows   []placedRow
	begins float64 // class time [s]
	ends   float64

	noStart bool // the first track does not have the start asked for
}

// music is a track as the part asked for it.
type music struct {
	ref     plan.TrackRef
	grid    *grid   // nil when nothing can be laid on the track
	problem string  // then why
	zero    float64 // class time of the track's 0:00 [s]
	start   int     // count on which the first item may begin
	used    bool
	ends    float64 // track time at which its last row ends [s]
}

// placedRow is a row with where it came from and where exactly it fell.
type placedRow struct {
	Row
	item     *plan.Item // nil for lead-ins, holds and changes
	run      int        // which of the item's runs
	reps     *plan.Reps // of a set
	music    *music     // nil when the row has no place
	from, to int        // counts
	at, upto float64    // [s] on the track's timeline
	asked    float64    // seconds of timed work as written
	setup    bool       // a wait that the next item's setup asks for
	past     bool       // some of it comes after the end of the music
}

// placeClass lays every part, one after the other.
func placeClass(c *plan.Class, tracks map[string]beat.Track) *placedClass {
	l := &placedClass{class: c}
	at, row := 0.0, 0
	for i := range c.Parts {
		p := placePart(&c.Parts[i], tracks, at)
		for j := range p.rows {
			row++
			p.rows[j].Row.Row = row
		}
		l.parts = append(l.parts, p)
		at = p.ends
	}
	l.cues()
	l.leads()
	l.count()
	l.marks()
	l.mirror()
	return l
}

// length is how long the class lasts [s].
func (l *placedClass) length() float64 {
	if len(l.parts) == 0 {
		return 0
	}
	return l.parts[len(l.parts)-1].ends
}

func (p *placedPart) summary() Part {
	out := Part{
		Part: p.part.Name, Kind: string(p.part.Kind), ClassTime: ms(p.begins),
		Seconds: ms(p.ends - p.begins), Tracks: []Music{},
	}
	if len(p.rows) > 0 {
		out.Row = p.rows[0].Row.Row
	}
	for i := range p.music {
		out.Tracks = append(out.Tracks, p.heard(&p.music[i]))
	}
	return out
}

// heard is a track as the part uses it.
func (p *placedPart) heard(m *music) Music {
	out := Music{File: m.ref.File, Problem: m.problem, Used: m.used}
	g := m.grid
	if g == nil {
		return out
	}
	out.Title, out.Duration, out.Loudness = g.track.Title, ms(g.duration), g.track.Loudness
	out.BPM, out.Speed = ms(g.bpm), g.speed
	usual, low, high := p.tempoOn(m)
	out.Played, out.Slowest, out.Fastest = ms(usual), ms(low), ms(high)
	out.Counts, out.Phrases = g.end(), len(g.phrases)-1
	for _, p := range g.phrases[1:] {
		if p.counts != beat.PhraseLen {
			out.Odd++
		}
	}
	out.Taught, out.Corrected = g.taught(), g.track.Corrected
	out.Start, out.Phrase = ms(g.time(m.start)), g.at(m.start).phrase
	if m.used {
		out.ClassAt = ms(m.zero)
		out.Left = ms(max(0, g.duration-m.ends) / g.speed)
	}
	return out
}
