package pulse

import "slices"

// trail remembers which period each cell's beat follows, so that a chain can be
// read back. Soon after a beat all chains that may still win agree on it: it is
// settled then, and the cells up to it are forgotten. So a mix of hours needs
// no more memory than a song.
type trail struct {
	meter, low, width int
	first             int      // frame of the oldest row kept
	from              []uint16 // period of the beat before, by row, beat and τ; 0 where there is none
	settled           []cell   // beats on which all chains agree, in order
	patience          int      // rows after which to settle
}

// cell is beat b of a bar beginning at frame t and lasting tau frames.
type cell struct{ t, b, tau int }

// settleEvery is the least number of rows before a settlement: about a minute,
// so that it costs next to nothing.
const settleEvery = 4096

// newTrail is the trail of n frames.
func newTrail(meter, low, width, n int) *trail {
	return &trail{
		meter: meter, low: low, width: width, patience: settleEvery,
		from: make([]uint16, 0, min(n, settleEvery)*meter*width),
	}
}

// rows is the number of frames kept.
func (r *trail) rows() int { return len(r.from) / (r.meter * r.width) }

// grow adds a row for the next frame and returns it, all beats in turn.
func (r *trail) grow() []uint16 {
	n := len(r.from)
	r.from = slices.Grow(r.from, r.meter*r.width)[:n+r.meter*r.width]
	return r.from[n:]
}

func (r *trail) index(c cell) int {
	return ((c.t-r.first)*r.meter+c.b)*r.width + c.tau - r.low
}

// before is the beat that c follows; it may lie before the first row.
func (r *trail) before(c cell) cell {
	tau := int(r.from[r.index(c)])
	return cell{c.t - tau, (c.b + r.meter - 1) % r.meter, tau}
}

// due reports whether it is time to settle.
func (r *trail) due() bool { return r.rows() >= r.patience }

// settle finds the last beat that the chains to all of the cells alive have in
// common, and settles it and those before it.
func (r *trail) settle(alive []cell) {
	if c, ok := r.common(alive); ok {
		r.settled = r.to(c)
		r.from = append(r.from[:0], r.from[(c.t+1-r.first)*r.meter*r.width:]...)
		r.first = c.t + 1
	}
	// Where the chains do not meet for long, trying again and again must not
	// take more time than the chains themselves.
	r.patience = max(settleEvery, 2*r.rows())
}

// common goes back along all chains at once, from frame to frame, until they
// have met in one cell.
func (r *trail) common(alive []cell) (cell, bool) {
	open := make([][]cell, r.rows()) // by row, the cells that chains go through
	for _, c := range alive {
		if c.t < r.first {
			return cell{}, false
		}
		open[c.t-r.first] = append(open[c.t-r.first], c)
	}
	n := len(alive)
	for row := len(open) - 1; row >= 0; row-- {
		if n == 1 && len(open[row]) == 1 {
			return open[row][0], true
		}
		for _, c := range open[row] {
			before := r.before(c)
			if before.t < r.first {
				return cell{}, false // they meet before the first row, if at all
			}
			n--
			if at := &open[before.t-r.first]; !slices.Contains(*at, before) {
				*at = append(*at, before)
				n++
			}
		}
	}
	return cell{}, false
}

// to is the chain to a cell, in order of time.
func (r *trail) to(c cell) []cell {
	var open []cell
	for ; c.t >= r.first; c = r.before(c) {
		open = append(open, c)
	}
	slices.Reverse(open)
	return append(r.settled, open...)
}
