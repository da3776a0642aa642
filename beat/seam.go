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
	n, at := change(before, after, h.fit(before), h.fit(after), apart*last.Period)
	if n < 3 || len(after)-at < 2 {
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

// change is how many beats of one row come before those of another, from the
// at-th on, so that they fit best by what fitA and fitB say of each. Beats of
// both are more than so much apart [s].
func change(before, after, fitA, fitB []float64, apart float64) (n, at int) {
	sum := 0.0
	for _, v := range fitB {
		sum += v
	}
	most, k := math.Inf(-1), 0
	for j, t := range after {
		for k < len(before) && before[k] < t-apart {
			sum += fitA[k]
			k++
		}
		if sum > most {
			most, n, at = sum, k, j
		}
		sum -= fitB[j]
	}
	return n, at
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
