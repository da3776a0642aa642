package score

import (
	"math"
	"slices"
)

const (
	pScoreRate  = 100 // of the impulse trains [1/s]
	pScoreShare = 0.2 // of the median reference interval: how far a beat may be off
)

// pScore cross-correlates the beats as impulse trains and sums the lags within
// a fifth of a beat.
//
// Ref: McKinney, Moelants, Davies & Klapuri 2007, "Evaluation of audio beat
// tracking and music tempo extraction algorithms".
func pScore(reference, estimated []float64) float64 {
	offset := min(reference[0], estimated[0])
	ref, est := impulses(reference, offset), impulses(estimated, offset)
	var intervals []float64
	for i := 1; i < len(ref); i++ {
		intervals = append(intervals, float64(ref[i]-ref[i-1]))
	}
	slices.Sort(intervals)
	n := len(intervals)
	if n == 0 {
		return 0
	}
	width := int(math.RoundToEven(pScoreShare * (intervals[(n-1)/2] + intervals[n/2]) / 2))
	sum := 0
	for _, a := range ref {
		for _, b := range est {
			if d := a - b; -width <= d && d <= width {
				sum++
			}
		}
	}
	return float64(sum) / float64(max(len(reference), len(estimated)))
}

// impulses are the beats in steps of the impulse train, each step once.
func impulses(beats []float64, offset float64) []int {
	var at []int
	for _, t := range beats {
		at = append(at, int(math.Ceil((t-offset)*pScoreRate)))
	}
	return slices.Compact(at)
}
