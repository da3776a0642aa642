package phrase

import (
	"math"

	"onphrase/beat/bar"
)

// clueCount is the number of clues that Clues gives for a bar.
const clueCount = 5

// cymbals is where the range of crash and ride cymbals begins [Hz].
const cymbals = 4000

// clues says for each bar how much it stands out among the bars of the track
// as the start of a phrase, in standard deviations:
//
//	0  the sound differs from that of the bar before
//	1  the rhythm differs from that of the bar before
//	2  its first beat is brighter than its others, as under a crash cymbal
//	3  repetitions of 2 bars begin or end
//	4  repetitions of 4 bars begin or end
func clues(s *bar.Sound, starts []int, meter int) [clueCount][]float64 {
	r := rowsOf(s, starts, meter)
	var c [clueCount][]float64
	for i := range c {
		c[i] = make([]float64, len(starts))
	}
	for i, start := range starts {
		if i > 0 {
			c[0][i] = distance(r.level[i], r.level[i-1])
			c[1][i] = distance(r.onset[i], r.onset[i-1])
		}
		c[2][i] = crash(s.Level[start:min(s.Len(), start+meter)], s.Bands)
	}
	like := compare(r, meter)
	c[3] = like.repetitionBreaks(2)
	c[4] = like.repetitionBreaks(4)
	for i := range c {
		standardize(c[i])
	}
	return c
}

// crash is how much louder the cymbals' range is in the first of beats than
// in the others.
func crash(beats [][]float64, bands []float64) float64 {
	sum, n := 0.0, 0.0
	for band, hz := range bands {
		if hz < cymbals || len(beats) < 2 {
			continue
		}
		rest := 0.0
		for _, row := range beats[1:] {
			rest += row[band] / float64(len(beats)-1)
		}
		sum += beats[0][band] - rest
		n++
	}
	if n == 0 {
		return 0
	}
	return sum / n
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
