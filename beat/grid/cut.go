package grid

import (
	"slices"
)

const (
	jitter     = 0.010 // of a hit about its line [s]
	cutCost    = 12.0  // of one more line [log-units]
	cutEvery   = 4     // beats: where a line may end
	leastPiece = 16    // beats on one line
)

// cutUp divides hits into the straight lines that explain them best: the first
// hit of each, and the end. Every line costs as much as cutCost.
//
// Ref: the segmented least squares of Bellman 1961, "On the approximation of
// curves by line segments using dynamic programming" (CACM 4), with hits that
// weigh what they are worth.
func cutUp(hits []Hit) []int {
	var at []int // where lines may begin or end
	for k := 0; k+cutEvery <= len(hits); k += cutEvery {
		at = append(at, k)
	}
	at = append(at, len(hits))
	s := sumUp(hits)
	cost, from := make([]float64, len(at)), make([]int, len(at))
	for j := 1; j < len(at); j++ {
		cost[j] = s.misfit(0, at[j])
		for i := 1; i < j; i++ {
			if at[j]-at[i] < leastPiece || at[i] < leastPiece {
				continue
			}
			if c := cost[i] + cutCost + s.misfit(at[i], at[j]); c < cost[j] {
				cost[j], from[j] = c, i
			}
		}
	}
	cuts := []int{len(hits)}
	for j := len(at) - 1; j > 0; j = from[j] {
		cuts = append(cuts, at[from[j]])
	}
	slices.Reverse(cuts)
	for i := 1; i+1 < len(cuts); i++ {
		cuts[i] = s.refine(cuts[i-1], cuts[i], cuts[i+1])
	}
	return cuts
}

// refine moves a cut to the beat beside it where two lines fit best, the first
// of those that are as good: a beat that both lines share begins the second.
func (s sums) refine(from, cut, to int) int {
	const asGood = 0.1 // [log-units]
	var fits [2*cutEvery - 1]float64
	for i := range fits {
		k := cut - cutEvery + 1 + i
		fits[i] = s.misfit(from, k) + s.misfit(k, to)
	}
	least := slices.Min(fits[:])
	return cut - cutEvery + 1 + slices.IndexFunc(fits[:], func(v float64) bool { return v <= least+asGood })
}

// sums are the prefix sums of a least-squares fit of time over number.
type sums [][6]float64

func sumUp(hits []Hit) sums {
	s := make(sums, len(hits)+1)
	for k, h := range hits {
		x, t, w := float64(k), h.Time, h.Weight
		for i, v := range [6]float64{w, w * x, w * x * x, w * t, w * x * t, w * t * t} {
			s[k+1][i] = s[k][i] + v
		}
	}
	return s
}

// misfit is how badly one line fits hits from..to-1 [log-units].
func (s sums) misfit(from, to int) float64 {
	var d [6]float64
	for i := range d {
		d[i] = s[to][i] - s[from][i]
	}
	w, x, xx, t, xt, tt := d[0], d[1], d[2], d[3], d[4], d[5]
	if w == 0 {
		return 0
	}
	vx, vt, c := xx-x*x/w, tt-t*t/w, xt-x*t/w
	if vx > 0 {
		vt -= c * c / vx
	}
	return max(0, vt) / (2 * jitter * jitter)
}
