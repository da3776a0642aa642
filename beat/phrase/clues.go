package phrase

import (
	"math"

	"onphrase/beat/bar"
)

// ClueCount is the number of clues that Clues gives for a bar.
const ClueCount = 4

// spans are the stretches over which repetitions are looked at [bars].
var spans = [...]int{2, 4}

// Clues says for each bar, given its first beat, how much it stands out among the bars of the track
// as the start of a phrase, in standard deviations:
//
//	0  the sound differs from that of the bar before
//	1  the rhythm differs from that of the bar before
//	2  repetitions of 2 bars begin or end
//	3  repetitions of 4 bars begin or end
func Clues(s *bar.Sound, starts []int, meter int) [ClueCount][]float64 {
	r := rowsOf(s, starts, meter)
	var c [ClueCount][]float64
	for i := range c {
		c[i] = make([]float64, len(starts))
	}
	for i := 1; i < len(starts); i++ {
		c[0][i] = distance(r.level[i], r.level[i-1])
		c[1][i] = distance(r.onset[i], r.onset[i-1])
	}
	like := compare(r, meter)
	for i, span := range spans {
		c[2+i] = like.repetitionBreaks(span)
	}
	for i := range c {
		standardize(c[i])
	}
	return c
}

// standardize brings the values after the first, which has no bar before it,
// to mean 0 and standard deviation 1, no further out than 4; the first
// becomes 0. All are 0 when nothing varies.
func standardize(x []float64) {
	const (
		still  = 1e-9
		widest = 4
	)
	if len(x) == 0 {
		return
	}
	x[0] = 0
	mean, square := 0.0, 0.0
	for _, v := range x[1:] {
		mean += v / float64(len(x)-1)
	}
	for _, v := range x[1:] {
		square += (v - mean) * (v - mean) / float64(len(x)-1)
	}
	deviation := math.Sqrt(square)
	for i := range x[1:] {
		if deviation < still {
			x[i+1] = 0
			continue
		}
		x[i+1] = min(widest, max(-widest, (x[i+1]-mean)/deviation))
	}
}
