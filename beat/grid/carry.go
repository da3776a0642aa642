package grid

import "math"

const (
	sameLine  = 0.010 // how far one line, carried on, may miss the next to be the same [s]
	sameSlope = 0.002 // how unlike the periods of two lines of the same may be, relative
)

// carry joins pieces that machines played on one line with what lies between
// them, where nothing says another one: in a break without attacks, or with some
// that keep to no count, both sides tell where the counts are.
func carry(hits []Hit, all []piece) []piece {
	var out []piece
	last := -1 // of out, that a machine played
	for _, p := range all {
		if p.machine() && last >= 0 && last < len(out)-1 && out[last].continues(p) {
			out[last] = out[last].join(hits, p)
			out = out[:last+1]
			continue
		}
		if out = append(out, p); p.machine() {
			last = len(out) - 1
		}
	}
	return out
}

// continues reports whether a later piece lies on the same line.
func (p piece) continues(q piece) bool {
	return math.Abs(p.at(q.from-p.from)-q.at(0)) < sameLine && math.Abs(math.Log(p.Period/q.Period)) < sameSlope
}

// join is the piece from the beginning of one to the end of another, on the
// line through the hits of both.
func (p piece) join(hits []Hit, q piece) piece {
	own := make([]Hit, q.to-p.from)
	copy(own, hits[p.from:p.to])
	copy(own[q.from-p.from:], hits[q.from:q.to])
	for k := p.to; k < q.from; k++ {
		own[k-p.from] = Hit{Time: p.at(k - p.from)}
	}
	p.line, p.to, p.ends = fitLine(own), q.to, q.ends
	return p
}
