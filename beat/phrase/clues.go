package phrase

import (
	"math"

	"onphrase/beat/bar"
)

// ClueCount is the number of clues that Clues gives for a bar.
const ClueCount = 12

const (
	// shortSpan and longSpan are the stretches over which repetitions are
	// looked at [bars].
	shortSpan, longSpan = 2, 4
	// around is how far to either side of a bar line what plays is summed up
	// [bars].
	around = 4
	// topBands is the number of bands, counted from the highest, in which a
	// cymbal is heard: an octave and a half.
	topBands = 12
)

// Clues says for each bar, given its first beat, how much it stands out among the bars of the track
// as the start of a phrase, in standard deviations; 0 where a clue cannot be had:
//
//	 0  the drums differ from those of the bar before
//	 1  repetitions of 2 bars begin or end
//	 2  they do so more than at the bars beside it: the change of one bar line is
//	    felt at its neighbours, too
//	 3  repetitions of 4 bars begin or end
//	 4  4 bars that come elsewhere, too, begin
//	 5  4 bars that come elsewhere, too, have ended
//	 6  the bar is like the one 8 before
//	 7  the 4 bars before are alike, and the 4 after, but not those with these
//	 8  the chords differ between the 4 bars before and after
//	 9  the chord is that of the first bar: most music sets out from home
//	10  count 1 is brighter than the counts before, as with a cymbal
//	11  the bar before was a fill: the drums on its last counts were not those of the bars before it, nor of those after
func Clues(s *bar.Sound, starts []int, meter int) [ClueCount][]float64 {
	r := rowsOf(s, starts, meter)
	like := compare(r, meter)
	short, long, twin := like.repetitionBreaks(shortSpan), like.repetitionBreaks(longSpan), like.twins(longSpan)
	chords, endings := r.chords(), endings(s, starts, meter)
	var c [ClueCount][]float64
	for k, clue := range [ClueCount]func(i int) float64{
		func(i int) float64 { return distance(r.onset[i], r.onset[i-1]) },
		func(i int) float64 { return short[i] },
		func(i int) float64 { return short[i] - max(at(short, i-1), at(short, i+1)) },
		func(i int) float64 { return long[i] },
		func(i int) float64 { return twin[i] - twin[i-1] },
		func(i int) float64 { return at(twin, i-longSpan) - at(twin, i-longSpan+1) },
		func(i int) float64 { return like.before(i, longest) },
		func(i int) float64 { return like.contrast(i, around) },
		func(i int) float64 { return 1 - cosine(sides(chords, i)) },
		func(i int) float64 { return cosine(chords[i], chords[0]) },
		func(i int) float64 { return brightness(s, starts[i]) - meanBrightness(s, starts[i]-meter, starts[i]) },
		func(i int) float64 {
			before, after := endings[max(0, i-1-around):i-1], endings[i:min(len(starts), i+around)]
			return min(unlike(endings[i-1], before), unlike(endings[i-1], after))
		},
	} {
		c[k] = make([]float64, len(starts))
		for i := range c[k] {
			c[k][i] = math.NaN()
			if i > 0 {
				c[k][i] = clue(i) // the first bar has none before it
			}
		}
		standardize(c[k])
	}
	return c
}

// at is x[i], or x's nearest value beyond its ends.
func at(x []float64, i int) float64 { return x[min(len(x)-1, max(0, i))] }

// sides are the means of the bars before and after a bar line.
func sides(rows [][]float64, i int) (before, after []float64) {
	return mean(rows[max(0, i-around):i]), mean(rows[i:min(len(rows), i+around)])
}

// unlike is the distance of a row from the mean of some, not a number where there are none.
func unlike(row []float64, others [][]float64) float64 {
	if len(others) == 0 {
		return math.NaN()
	}
	return distance(row, mean(others))
}

// endings are the onsets of the last two beats of each bar, one after the other.
func endings(s *bar.Sound, starts []int, meter int) [][]float64 {
	const last = 2
	out := make([][]float64, len(starts))
	for i, start := range starts {
		end := min(s.Len(), start+meter)
		out[i] = join(s.Onset[max(start, end-last):end], last)
	}
	return out
}

// brightness is the level of the highest bands on a beat.
func brightness(s *bar.Sound, beat int) float64 {
	row, sum := s.Level[beat], 0.0
	for _, v := range row[max(0, len(row)-topBands):] {
		sum += v
	}
	return sum
}

func meanBrightness(s *bar.Sound, from, to int) float64 {
	sum := 0.0
	from = max(0, from)
	for b := from; b < to; b++ {
		sum += brightness(s, b)
	}
	return sum / float64(max(1, to-from))
}

// standardize brings x to mean 0 and standard deviation 1, no further out than
// 2: one clue alone, however strong, proves nothing. What is no number becomes
// 0, and everything when nothing varies.
func standardize(x []float64) {
	const (
		still  = 1e-9
		widest = 2
	)
	sum, square, n := 0.0, 0.0, 0.0
	for _, v := range x {
		if !math.IsNaN(v) {
			sum += v
			square += v * v
			n++
		}
	}
	mean := sum / max(1, n)
	deviation := math.Sqrt(max(0, square/max(1, n)-mean*mean))
	for i, v := range x {
		if math.IsNaN(v) || deviation < still {
			x[i] = 0
			continue
		}
		x[i] = min(widest, max(-widest, (v-mean)/deviation))
	}
}
