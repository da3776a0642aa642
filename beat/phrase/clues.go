package phrase

import (
	"math"

	"onphrase/beat/bar"
)

// ClueCount is the number of clues that Clues gives for a bar.
const ClueCount = 8

const (
	// shortSpan and longSpan are the stretches over which repetitions are
	// looked at [bars].
	shortSpan, longSpan = 2, 4
	// around is how far to either side of a bar line what plays is summed up
	// [bars].
	around = 4
	// pattern is the length of a pattern of drums or chords that most music
	// repeats [bars].
	pattern = 2
)

// Clues says for each bar, given its first beat, how much it stands out among the bars of the track
// as the start of a phrase, in standard deviations:
//
//	0  the sound differs from that of the bar before
//	1  the rhythm differs from that of the bar before
//	2  repetitions of 2 bars begin or end
//	3  repetitions of 4 bars begin or end
//	4  the bar before was a fill: it differs from the one before it
//	5  the rhythm differs between the 4 bars before and after
//	6  the chords differ between the 4 bars before and after
//	7  the bar is like the one two before: a pattern begins anew
func Clues(s *bar.Sound, starts []int, meter int) [ClueCount][]float64 {
	r := rowsOf(s, starts, meter)
	like := compare(r, meter)
	short, long := like.repetitionBreaks(shortSpan), like.repetitionBreaks(longSpan)
	chords := r.chords()
	var c [ClueCount][]float64
	for k, clue := range [ClueCount]func(i int) float64{
		func(i int) float64 { return distance(r.level[i], r.level[i-1]) },
		func(i int) float64 { return distance(r.onset[i], r.onset[i-1]) },
		func(i int) float64 { return short[i] },
		func(i int) float64 { return long[i] },
		func(i int) float64 { return distance(r.rhythm[i-1], r.rhythm[max(0, i-2)]) },
		func(i int) float64 { return distance(sides(r.onset, i)) },
		func(i int) float64 { return 1 - cosine(sides(chords, i)) },
		func(i int) float64 { return like.at(i, max(0, i-pattern)) },
	} {
		c[k] = make([]float64, len(starts))
		for i := 1; i < len(starts); i++ {
			c[k][i] = clue(i)
		}
		standardize(c[k])
	}
	return c
}

// sides are the means of the bars before and after a bar line.
func sides(rows [][]float64, i int) (before, after []float64) {
	return mean(rows[max(0, i-around):i]), mean(rows[i:min(len(rows), i+around)])
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
