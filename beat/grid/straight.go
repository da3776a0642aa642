package grid

import "math"

const (
	surelyBent = 6.0   // F of a bend from which it is none of chance
	leastBend  = 0.004 // of a bend that moves a count [s]
	humanBend  = 0.005 // of what people play between one cut and the next [s]
	around     = 32    // beats on either side of a cut that tell a step from a bend
	fewestNear = 12    // hits that can tell
	stepOdds   = 8.0   // of a step against a bend, from which it is one [log-units],
	sureOdds   = 20.0  // and from which no player makes it
)

// bend is how far hits follow a curve, a cubic, rather than their line, as a
// root mean square [s]: people drift where a machine keeps to its tempo. It is 0
// where chance may do as much. shows says whether what people play would show
// among so many hits, as exact as these.
//
// Ref: the F test of nested linear models (from memory).
func (l line) bend(hits []Hit) (bend float64, shows bool) {
	const more, all = 2, 4 // coefficients beyond the line's, and all
	var s swarm
	for k, h := range hits {
		s.add(k, len(hits), h.Time-l.at(k), h.Weight)
	}
	if len(s) < fewestNear {
		return 0, false
	}
	c := fitCubic(s)
	square, rest := s.square(func(p point) float64 { return c.at(p.x) }),
		s.square(func(p point) float64 { return p.y - c.at(p.x) })
	chance := surelyBent * more * rest / float64(len(s)-all)
	if square > chance {
		bend = math.Sqrt(square)
	}
	return bend, humanBend*humanBend > 2*chance
}

// stepAt is how much likelier the tempo of hits, or their place, changes at once
// at the cut between two pieces than that it bends there [log-units]: how much
// better two lines explain the hits around it than one curve does.
func stepAt(hits []Hit, from, cut, to int) float64 {
	from, to = max(from, cut-around), min(to, cut+around)
	before, after := fitLine(hits[from:cut]), fitLine(hits[cut:to])
	var two, one swarm // distances from the two lines; from the first of them
	for k := from; k < to; k++ {
		h := hits[k]
		d := h.Time - before.at(k-from)
		off := d
		if k >= cut {
			off = h.Time - after.at(k-cut)
		}
		if math.Abs(off) <= nearLine {
			two.add(k-from, to-from, off, h.Weight)
			one = append(one, point{place(k-from, to-from), d, h.Weight})
		}
	}
	if len(two) < fewestNear {
		return 0
	}
	c := fitCubic(one)
	bend := one.square(func(p point) float64 { return p.y - c.at(p.x) })
	lines := two.square(func(p point) float64 { return p.y })
	const tiny = 1e-9 // [s²]: nothing is measured more exactly
	return float64(len(two)) / 2 * math.Log((bend+tiny)/(lines+tiny))
}
