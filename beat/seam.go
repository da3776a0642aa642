package beat

import (
	"math"
	"slices"

	"onphrase/beat/grid"
)

const (
	blurred = 8.0  // how far from its place the tempogram may see a jump [s]
	apart   = 0.7  // of a count, that counts of two tempi are apart at least where they meet
	shared  = 0.05 // of a count, that counts of both lines are apart at most that are the same
)

// join moves the seams between stretches to the counts at which the tempo
// jumps: the tempogram sees them through a window that is too wide for it.
func (h *heard) join(parts []part) {
	for i := 1; i < len(parts); i++ {
		h.meet(&parts[i-1], &parts[i])
	}
}

// meet moves the seam between two stretches, where both keep to a line there,
// to the count from which on the attacks keep to the second line rather than
// to the first.
func (h *heard) meet(a, b *part) {
	if len(a.Lines) == 0 || len(b.Lines) == 0 || a.Lines[len(a.Lines)-1].To != len(a.Beats) || b.Lines[0].From != 0 {
		return
	}
	last, first := &a.Lines[len(a.Lines)-1], &b.Lines[0]
	early, late := max(a.Beats[last.From], b.From-blurred), min(b.Beats[first.To-1], b.From+blurred)
	before := row(a.Beats[last.From], last.Period, late)    // the first line, carried on
	after := row(b.Beats[first.To-1], -first.Period, early) // the second, carried back
	slices.Reverse(after)
	fitA, fitB := h.fit(before), h.fit(after)
	sum := 0.0 // of the first line up to the seam, and the second from there on
	for _, v := range fitB {
		sum += v
	}
	best, at, n := 0.0, -1, 0
	k := 0 // counts of the first line before the seam
	for j, t := range after {
		for k < len(before) && before[k] < t-apart*last.Period {
			sum += fitA[k]
			k++
		}
		if t >= early && (at < 0 || sum > best) {
			best, at, n = sum, j, k
		}
		sum -= fitB[j]
	}
	if at < 0 || n < 3 || len(after)-at < 2 {
		return
	}
	if at > 0 && math.Abs(before[n-1]-after[at-1]) < shared*first.Period {
		at, n = at-1, n-1 // the new tempo begins with the count that both share
	}
	a.Beats = append(a.Beats[:last.From:last.From], before[:n]...)
	last.To = len(a.Beats)
	rest := b.Beats[first.To:]
	b.Beats = append(after[at:len(after):len(after)], rest...)
	shift := len(after) - at - first.To
	first.To += shift
	for i := 1; i < len(b.Lines); i++ {
		b.Lines[i].From += shift
		b.Lines[i].To += shift
	}
	a.To, b.From = after[at], after[at]
}

// row are the times from one on to another, a period apart.
func row(from, period, to float64) []float64 {
	var out []float64
	for k := 0; ; k++ {
		t := from + float64(k)*period
		if period > 0 && t > to || period < 0 && t < to {
			return out
		}
		out = append(out, t)
	}
}

// fit is how well the attacks fit beats.
func (h *heard) fit(beats []float64) []float64 {
	return grid.Agreement(beats, grid.Hits(beats, h.attack.Energy, h.attack.FPS))
}
