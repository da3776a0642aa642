package beat

import (
	"math"
	"slices"

	"onphrase/beat/grid"
	"onphrase/beat/reading"
	"onphrase/beat/tempo"
)

const (
	// leastDecided is how much more must speak for one half of the counts than for
	// the other, over all of the music on them, for a jump between them to be none
	// where a break of breakCounts or more parts them [log-odds]: after it music may
	// begin anew. Without a break no song jumps, and leastTold is enough: with less,
	// either half is as likely wrong, and the jump is left to be named.
	leastDecided, leastTold, breakCounts = 1.0, 0.25, 8
	// offHalf is how far a count may lie from the half counts of a comb to be one of
	// them, as a share of a count, and leastOn the share of counts that must be.
	offHalf, leastOn = 0.08, 0.75
)

// straight is one of the straight lines of a track.
type straight struct {
	part     int // that it belongs to
	from, to int // its beats there
	beats    []float64
}

// straights lists the lines of all parts.
func straights(parts []part) []straight {
	var out []straight
	for i, p := range parts {
		for _, l := range p.Lines {
			out = append(out, straight{i, l.From, l.To, p.Beats[l.From:l.To]})
		}
	}
	return out
}

// oneTempo makes one piece of what keeps to one tempo throughout: where all
// counts lie on the half counts of one comb, the song has one phase, and all that
// sounds decides on it once. Else sections whose off-beats are louder than their
// beats would jump to them by half a count and back.
func (h *heard) oneTempo(parts []part, c cues) []part {
	all := straights(parts)
	groups := grouped(all, 0, len(all))
	for i := len(groups) - 1; i >= 0; i-- { // the last first: it changes no part before it
		g := groups[i]
		if joined, ok := h.onePhase(parts, g.comb, all[g.first:g.last], c); ok {
			parts = joined
		}
	}
	return parts
}

// group are lines first..last-1, all on one comb.
type group struct {
	comb        grid.Comb
	first, last int
}

// grouped are the groups of lines from..to-1, in order: first the longest line and
// those beside it that lie on its comb, then the others on both sides.
func grouped(all []straight, from, to int) []group {
	if from >= to {
		return nil
	}
	i := from
	for j := from; j < to; j++ {
		if len(all[j].beats) > len(all[i].beats) {
			i = j
		}
	}
	g := group{grid.CombOf(all[i].beats), i, i + 1}
	for g.take(all, g.first-1, from, to) || g.take(all, g.last, from, to) {
	}
	return slices.Concat(grouped(all, from, g.first), []group{g}, grouped(all, g.last, to))
}

// take adds a line of from..to-1 beside the group, if it lies on its comb.
func (g *group) take(all []straight, at, from, to int) bool {
	if at < from || at >= to || !g.comb.Holds(all[at].beats) {
		return false
	}
	g.first, g.last = min(g.first, at), max(g.last, at+1)
	var rows [][]float64
	for _, s := range all[g.first:g.last] {
		rows = append(rows, s.beats)
	}
	g.comb = g.comb.Through(rows)
	return true
}

// onePhase joins the parts of lines that lie on one comb, and puts all counts
// between and around them that do to the one half of the comb for which more
// speaks. It reports whether there was anything to do.
func (h *heard) onePhase(parts []part, comb grid.Comb, lines []straight, c cues) ([]part, bool) {
	a, b := lines[0], lines[len(lines)-1]
	run := parts[a.part : b.part+1]
	before := around(comb, run[0].Beats[endBefore(run[0], a.from):a.from])
	after := around(comb, run[len(run)-1].Beats[b.to:startAfter(run[len(run)-1], b.to)])
	beats := joinBeats(run)
	i, _ := slices.BinarySearch(beats, a.beats[0])
	j, _ := slices.BinarySearch(beats, b.beats[len(b.beats)-1])
	i, j = max(0, i-before), min(len(beats), j+1+after)
	if oneHalf(comb, beats[i:j]) {
		return nil, false
	}
	odds := c.halves(comb, beats[i], beats[j-1]) + majority(comb, beats[i:j])
	if told := math.Abs(odds); told < leastTold || told < leastDecided && parted(comb, lines) {
		return nil, false
	}
	half := 0
	if odds < 0 {
		half = 1
	}
	row := rowOn(comb, half, beats[i]-comb.Half/2, beats[j-1]+comb.Half/2)
	beats = slices.Concat(beats[:i], row, beats[j:])
	p := h.rejoin(run, beats, 1/(1+math.Exp(-math.Abs(odds))), c)
	return slices.Concat(parts[:a.part:a.part], []part{p}, parts[b.part+1:]), true
}

// majority is how much more counts lie on the even half of a comb than on the odd
// one [log-odds].
func majority(comb grid.Comb, beats []float64) float64 {
	n := [2]float64{1, 1}
	for _, t := range beats {
		n[comb.Nearest(t)&1]++
	}
	return math.Log(n[0] / n[1])
}

// parted reports whether a break lies between two lines on different halves of a
// comb.
func parted(comb grid.Comb, lines []straight) bool {
	for i := 1; i < len(lines); i++ {
		before, after := lines[i-1].beats, lines[i].beats
		from, to := comb.Nearest(before[len(before)-1]), comb.Nearest(after[0])
		if (to-from)&1 == 1 && to-from > 2*breakCounts {
			return true
		}
	}
	return false
}

// around is how many of some beats, which are on no line, lie on the comb: all
// or none.
func around(comb grid.Comb, beats []float64) int {
	n := 0
	for _, t := range beats {
		if math.Abs(comb.Off(t)) <= offHalf*2*comb.Half {
			n++
		}
	}
	if float64(n) < leastOn*float64(len(beats)) {
		return 0
	}
	return len(beats)
}

// endBefore is where the line before beat k of a part ends, startAfter where the
// next one begins from there on.
func endBefore(p part, k int) int {
	end := 0
	for _, l := range p.Lines {
		if l.To <= k {
			end = l.To
		}
	}
	return end
}

func startAfter(p part, k int) int {
	for _, l := range p.Lines {
		if l.From >= k {
			return l.From
		}
	}
	return len(p.Beats)
}

// joinBeats are the beats of some parts, those that two share once.
func joinBeats(run []part) []float64 {
	var out []float64
	for _, p := range run {
		for _, t := range p.Beats {
			if n := len(out); n == 0 || t > out[n-1]+p.Period/4 {
				out = append(out, t)
			}
		}
	}
	return out
}

// oneHalf reports whether beats are all whole counts of a comb apart, one after
// the other.
func oneHalf(comb grid.Comb, beats []float64) bool {
	for i := 1; i < len(beats); i++ {
		if comb.Nearest(beats[i])-comb.Nearest(beats[i-1]) != 2 {
			return false
		}
	}
	return true
}

// rowOn are the even or odd half counts of a comb within a time [s].
func rowOn(comb grid.Comb, half int, from, to float64) []float64 {
	var out []float64
	for k := comb.Nearest(from); comb.At(k) <= to; k++ {
		if k&1 == half && comb.At(k) >= max(0, from) {
			out = append(out, comb.At(k))
		}
	}
	return out
}

// halves is how much more speaks for the even half counts of a comb than for the
// odd ones within a time [log-odds].
func (c cues) halves(comb grid.Comb, from, to float64) float64 {
	period := 2 * comb.Half
	var all []reading.Reading
	for half := range 2 {
		all = append(all, reading.Reading{Beats: rowOn(comb, half, from-comb.Half/2, to+comb.Half/2), Period: period})
	}
	s := tempo.Stretch{From: max(0, from), To: to, Curve: tempo.Steady(period)}
	var led *reading.Ear
	if c.heard {
		led = c.earOf(s)
	}
	reading.Listen(all, c.evidence(s), led)
	return all[0].Over(all[1])
}

// rejoin makes one part of some, with other beats. sure is the probability of
// these against those half a count away.
func (h *heard) rejoin(run []part, beats []float64, sure float64, c cues) part {
	p := run[0]
	for _, q := range run {
		if len(q.Beats) > len(p.Beats) {
			p = q
		}
	}
	p.From, p.To = run[0].From, run[len(run)-1].To
	hits := grid.Hits(beats, h.attack.Energy, h.attack.FPS)
	p.Grid, p.hits, p.half = grid.Fit(beats, hits), sounding(hits), sure
	if p.heard {
		p.signs = c.signs(p.Beats, p.readings[0].Odds)
		p.unsure = p.loose(c.strength(p.Beats), hits)
	}
	return p
}
