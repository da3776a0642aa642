package align

import "onphrase/plan"

// trusted is the trust from which on a place in the music is relied upon:
// more likely right than wrong.
const trusted = 0.5

// firstTrusted is the first count of the first phrase that can be trusted,
// or of the first phrase when none can.
func (g *grid) firstTrusted() int {
	for _, p := range g.phrases[1:] {
		if p.trust >= trusted {
			return p.first
		}
	}
	return g.phrases[0].counts
}

// started is the count that a class file's start names, and whether the
// music has it.
func (g *grid) started(s plan.Start) (count int, ok bool) {
	switch {
	case s.Time != nil:
		i := g.nearest(*s.Time)
		return i, *s.Time >= 0 && i < g.end()
	case s.Phrase > 0:
		if s.Phrase >= len(g.phrases) {
			return 0, false
		}
		return g.phrases[s.Phrase].first, true
	case s.Count > 0:
		i := g.phrases[0].counts + s.Count - 1
		return i, i < g.end()
	}
	return g.firstTrusted(), true
}

// steadyCounts is the number of counts before one that can be counted; 0 where
// some of them lie on music without a steady beat: that is a time, not counts.
func (g *grid) steadyCounts(to int) int {
	for _, u := range g.track.Unsteady {
		if u[0] < g.time(to) {
			return 0
		}
	}
	return max(0, to)
}

// ready is the earliest time for an item that needs a setup after at [s].
func (g *grid) ready(at float64, setup plan.Length) float64 {
	if setup.Counts > 0 && at < g.times[0] { // no count is heard yet
		return at + float64(setup.Counts)*g.firstPeriod()
	}
	if setup.Counts > 0 {
		return g.time(g.index(at) + setup.Counts)
	}
	return at + setup.Seconds*g.speed
}
