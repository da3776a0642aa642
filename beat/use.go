package beat

// Use is what a phrase lends itself to in a class: a suggestion drawn from
// how full it sounds, what comes next, where it stands and how long it is
// (common practice, no source). The instructor knows better.
type Use string

const (
	SetUp   Use = "set up"  // the first, not yet full: take the position, show the move
	Work    Use = "work"    // full, or as full as the rest
	Build   Use = "build"   // a fuller one follows: add a layer, cue the change
	Recover Use = "recover" // the song has thinned out: a base move, a breath
	Hold    Use = "hold"    // shorter than usual: hold a base move and cue what comes
	Finish  Use = "finish"  // the last, and thinning out: end the set
)

// Suggest sets the use of every phrase of a song.
func Suggest(phrases []Phrase) {
	usual := usualCounts(phrases)
	for i := range phrases {
		phrases[i].Use = useOf(phrases, i, usual)
	}
}

func useOf(all []Phrase, i, usual int) Use {
	p := all[i]
	last := i == len(all)-1
	switch {
	case last && i > 0 && (p.Counts < usual || p.Energy != High):
		return Finish
	case p.Counts < usual:
		return Hold
	case p.Energy == High:
		return Work
	case i == 0 && !last:
		return SetUp
	case p.Energy == Low:
		return Recover
	case nextEnergy(all, i, usual) == High:
		return Build
	}
	return Work
}

// nextEnergy is that of the next phrase that is no mere tag or bridge.
func nextEnergy(all []Phrase, i, usual int) Energy {
	for _, p := range all[i+1:] {
		if p.Counts >= usual {
			return p.Energy
		}
	}
	return ""
}

// usualCounts is the commonest length of the phrases, the longest of several.
func usualCounts(phrases []Phrase) int {
	times, best := map[int]int{}, 0
	for _, p := range phrases {
		times[p.Counts]++
	}
	for counts, n := range times {
		if n > times[best] || n == times[best] && counts > best {
			best = counts
		}
	}
	return best
}
