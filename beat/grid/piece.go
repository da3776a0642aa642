package grid

const (
	phrase    = 28 // beats, a phrase but for the cut's inexactness: what keeps to a line for less is played by people
	longPiece = 64 // beats: what keeps to a line for so long is a machine's whatever is beside it
)

// piece is what lies between two cuts: hits from..to-1 and the line through
// them.
type piece struct {
	line
	from, to     int
	good         bool    // they keep to it
	bend         float64 // how far they bend about it [s]
	shows        bool    // a player would show: in a bend of his, or instead of a step that is none of his
	begins, ends bool    // at once, or with the music; not by a bend
}

// pieces are hits cut up.
func pieces(hits []Hit) []piece {
	cuts := cutUp(hits)
	all := make([]piece, len(cuts)-1)
	for i := range all {
		from, to := cuts[i], cuts[i+1]
		own := hits[from:to]
		l := fitLine(own)
		all[i] = piece{line: l, from: from, to: to, good: l.judge(own).good()}
		all[i].bend, all[i].shows = l.bend(own)
	}
	all[0].begins, all[len(all)-1].ends = true, true
	if len(all) == 1 {
		all[0].shows = true // there is nothing else to tell it from
	}
	for i := 1; i < len(all); i++ {
		a, b := &all[i-1], &all[i]
		odds := stepAt(hits, a.from, b.from, b.to)
		a.ends, b.begins = odds > stepOdds, odds > stepOdds
		if odds > sureOdds {
			a.shows, b.shows = true, true
		}
	}
	return all
}

// whole reports whether the piece is a tempo of its own: a straight line from
// where it begins at once to where it ends at once.
func (p piece) whole() bool {
	return p.good && p.begins && p.ends && p.shows && p.bend < leastBend/2 && p.to-p.from >= phrase
}

// machine reports whether a machine played the piece: it is whole, or so long
// that what lies beside it does not matter.
func (p piece) machine() bool {
	return p.whole() || p.good && p.shows && p.bend < leastBend && p.to-p.from >= longPiece
}
