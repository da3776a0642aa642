package phrase

import (
	"math"
	"slices"
)

// segmentation is the likeliest list of phrases of a track.
type segmentation struct {
	starts []int     // bar where each phrase starts; the last one ends with the track
	chance []float64 // of each bar of the track: the share of lists in which a phrase starts there, 0-1
}

// segment finds the phrases of a track of len(odds) bars, by a semi-Markov
// chain: a list of phrases scores the log-odds of each of its starts but the
// first, and the logarithm of the share of each of its lengths. The list
// starts at the first bar; or, just as likely, at the second, where pickUp
// says that the first is perhaps no bar.
func segment(odds []float64, pickUp bool) segmentation {
	var out segmentation
	if len(odds) == 0 {
		return out
	}
	from := likeliest(odds, pickUp)
	for i := from[len(odds)]; i >= 0; i = from[i] {
		out.starts = append(out.starts, i)
	}
	slices.Reverse(out.starts)
	out.starts = whole(out.starts, len(odds))
	out.chance = Chances(odds, pickUp)
	return out
}

// whole joins neighbours that make exactly one whole phrase. A change half way
// through, as when the drums set in after 16 counts of an intro, shifts none
// of the phrases behind it: she counts 32 straight on.
func whole(starts []int, end int) []int {
	var out []int
	for i := 0; i < len(starts); i++ {
		out = append(out, starts[i])
		after := end
		if i+2 < len(starts) {
			after = starts[i+2]
		}
		if i+1 < len(starts) && after-starts[i] == longest {
			i++
		}
	}
	return out
}

// step is the score of a phrase from bar i up to bar j, and of starting the
// next one there.
func step(odds []float64, i, j int) float64 {
	score := math.Log(shareAt(i, j, len(odds)))
	if j < len(odds) {
		score += odds[j]
	}
	return score
}

// entry marks the start of the list.
const entry = -1

// likeliest gives for each bar, and the end of the track, where the phrase
// before it starts on the best path, or entry.
func likeliest(odds []float64, pickUp bool) []int {
	best, from := make([]float64, len(odds)+1), make([]int, len(odds)+1)
	from[0] = entry
	for j := 1; j <= len(odds); j++ {
		best[j] = math.Inf(-1)
		if j == 1 && pickUp {
			best[j], from[j] = 0, entry
		}
		for i := max(0, j-longest); i < j; i++ {
			if s := best[i] + step(odds, i, j); s > best[j] {
				best[j], from[j] = s, i
			}
		}
	}
	return from
}

// Chances is the share of all lists of phrases, by likelihood, that have a
// start at each bar, given the log-odds of each: forward-backward. pickUp says
// that the list may as well start at the second bar.
func Chances(odds []float64, pickUp bool) []float64 {
	n := len(odds)
	before, after := forward(odds, pickUp), make([]float64, n+1)
	for i := n - 1; i >= 0; i-- {
		var paths []float64
		for j := i + 1; j <= min(n, i+longest); j++ {
			paths = append(paths, step(odds, i, j)+after[j])
		}
		after[i] = logSum(paths)
	}
	out := make([]float64, n)
	for i := range out {
		out[i] = math.Exp(before[i] + after[i] - before[n])
	}
	return out
}

// LogSum is the logarithm of the likelihoods of all lists of phrases together,
// given the log-odds of each bar.
func LogSum(odds []float64) float64 { return forward(odds, false)[len(odds)] }

// forward gives, for each bar and the end of the track, the logarithm of the
// likelihoods of all lists up to a start there.
func forward(odds []float64, pickUp bool) []float64 {
	before := make([]float64, len(odds)+1)
	for j := 1; j <= len(odds); j++ {
		var paths []float64
		for i := max(0, j-longest); i < j; i++ {
			paths = append(paths, before[i]+step(odds, i, j))
		}
		if j == 1 && pickUp {
			paths = append(paths, 0)
		}
		before[j] = logSum(paths)
	}
	return before
}

// logSum is log Σ exp(x).
func logSum(x []float64) float64 {
	top := slices.Max(x)
	sum := 0.0
	for _, v := range x {
		sum += math.Exp(v - top)
	}
	return top + math.Log(sum)
}
