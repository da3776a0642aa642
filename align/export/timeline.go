package export

import (
	"slices"
	"sort"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// use is a track while it plays, on the timeline of the class.
type use struct {
	align.Music
	part string
	ends float64 // when the next track begins, or the class ends [s]
}

// uses lists the tracks as they are played one after the other.
func uses(m *align.CountMap) []use {
	var all []use
	for _, p := range m.Parts {
		for _, t := range p.Tracks {
			if t.Used && t.Speed > 0 {
				all = append(all, use{Music: t, part: p.Part, ends: m.Length})
			}
		}
	}
	for i := 1; i < len(all); i++ {
		all[i-1].ends = all[i].ClassAt
	}
	return all
}

// useOf is the use of a track that a row lies on.
func useOf(all []use, r align.Row) (use, bool) {
	for _, u := range slices.Backward(all) {
		if u.File == r.Track && u.ClassAt <= r.ClassTime+rounding {
			return u, true
		}
	}
	return use{}, false
}

// rounding is half of the step to which a count map rounds its times [s].
const rounding = 0.0005

// classTime is the class time of a moment of the track [s].
func (u use) classTime(track float64) float64 { return u.ClassAt + track/u.Speed }

// act is one thing that the class does: a row, or a move of a block.
type act struct {
	part     string
	from, to float64 // class time [s]
	cue      float64 // when it is announced; from when it is not
	what     string
	words    string // the announcement
	calls    []align.Mark
}

// acts lists what the class does in the order of time. Rows without a place on
// any music have no time and are left out.
func acts(m *align.CountMap) []act {
	var all []act
	played := uses(m)
	for _, r := range m.Rows {
		if !r.Placed || r.Kind == align.ChangeRow {
			continue
		}
		if u, ok := useOf(played, r); ok && r.Kind == align.BlockRow && len(r.Moves) > 0 {
			all = append(all, steps(u, r)...)
			continue
		}
		a := act{part: r.Part, from: r.ClassTime, to: r.ClassTime + r.Seconds, cue: r.ClassTime, what: rowWords(r),
			calls: r.Marks}
		a.announce(r)
		all = append(all, a)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].from < all[j].from })
	return all
}

func (a *act) announce(r align.Row) {
	if r.CueCounts == 0 {
		return
	}
	a.cue, a.words = min(r.CueTime, a.from), a.what
	if r.Cue != "" {
		a.words += ": " + spoken(r.Cue)
	}
}

// steps takes a block apart into its moves. Each is announced four counts
// before it begins, the first of them when the block is.
func steps(u use, r align.Row) []act {
	const early = 4 // counts; common practice, no source
	var all []act
	for i, s := range r.Moves {
		words := []string{s.Move, say.Many(s.Counts, "count")}
		if len(s.With) > 0 {
			words = append(words, "with "+strings.Join(s.With, " and "))
		}
		if s.Lead != "" {
			words = append(words, s.Lead+" lead")
		} else if side := r.SideWords(); side != "" {
			words = append(words, side)
		}
		a := act{
			part: r.Part, from: u.countTime(r, s.Count-1), to: u.countTime(r, s.Count-1+s.Counts),
			what: itemOf(r) + ": " + strings.Join(words, ", "),
		}
		if i == 0 {
			a.cue = a.from
			a.announce(r)
		} else {
			a.cue, a.words = u.countTime(r, s.Count-1-early), strings.Join(words, ", ")
		}
		all = append(all, a)
	}
	return all
}

// countTime is the class time of a count of a row, the first being 0 [s].
func (u use) countTime(r align.Row, count int) float64 {
	if count == 0 {
		return r.ClassTime
	}
	if count == r.Counts {
		return r.ClassTime + r.Seconds
	}
	if u.Taught != nil {
		first := sort.SearchFloat64s(u.Taught.Counts, r.TrackTime-rounding)
		if i := first + count; i >= 0 && i < len(u.Taught.Counts) {
			return u.classTime(u.Taught.Counts[i])
		}
	}
	return r.ClassTime + r.Seconds*float64(count)/float64(max(1, r.Counts))
}

// rowWords says in a line what a row is.
func rowWords(r align.Row) string {
	words := []string{itemOf(r)}
	switch reps := repsOf(r); {
	case reps != "":
		words = append(words, reps)
	case r.Counts > 0:
		words = append(words, say.Many(r.Counts, "count"))
	}
	return joined(", ", append(words, r.SideWords(), r.Weight, r.RangeWords())...)
}

// spoken marks words that are to be said.
func spoken(s string) string { return "\u201c" + s + "\u201d" }
