package bar

import (
	"math"
	"slices"
)

// ClueCount is the number of clues that Clues gives for a beat.
const ClueCount = 6

// clueWeights say how much a beat that stands out by one standard deviation of
// a clue speaks for being count 1, in log-units for a whole track of such
// beats. They are a conditional logistic model: which of the four phases is
// right, given the mean of each clue at that phase, with a ridge. Fitted by
// 'beat/learn/phrases bars' to music outside the test corpus, a part of it such
// that the ear had never heard: where it has, it seems surer than it is.
var clueWeights = [ClueCount]float64{1.2, 1.0, 0.65, -0.5, 1.6, 1.5}

// widest is how many standard deviations one beat may stand out by: a single
// crash must not outvote a song.
const widest = 3

// changeSpans are the stretches before and after a beat that are compared
// for a change [beats].
var changeSpans = [...]int{1, 2, 4}

// Clues says for each beat how far it stands out in the track, in standard
// deviations:
//
//	0  the chord changes: chroma before and after
//	1  the bass changes its note
//	2  the kick drum sounds
//	3  sound begins between this beat and the next, as in a fill
//	4  the arrangement changes
//	5  the ear takes the beat for count 1; all 0 where nobody listened
func Clues(s *Sound) [ClueCount][]float64 {
	one := s.One
	if one == nil {
		one = make([]float64, s.Len())
	}
	clues := [ClueCount][]float64{changes(s.Chroma), changes(s.Bass), onBeat(s), offBeat(s), turningPoints(s), one}
	for k := range clues {
		clues[k] = standardize(clues[k])
	}
	return clues
}

// Evidence says for each beat how much it sounds like count 1, around 0 over
// a track, in the log-units of the weights.
func Evidence(s *Sound) []float64 {
	sum := make([]float64, s.Len())
	for k, clue := range Clues(s) {
		for i, v := range clue {
			sum[i] += clueWeights[k] * v
		}
	}
	return sum
}

// changes is how much the direction of x turns at each beat, over the spans
// together.
func changes(x [][]float64) []float64 {
	sum := make([]float64, len(x))
	for _, span := range changeSpans {
		for i, v := range standardize(turn(x, span)) {
			sum[i] += v
		}
	}
	return sum
}

// turn is 1 - cosine between the means of the span rows before and after each
// row; the first row, with nothing before it, gets the mean of the others.
func turn(x [][]float64, span int) []float64 {
	out := make([]float64, len(x))
	sum := 0.0
	for i := 1; i < len(x); i++ {
		before := total(x[max(0, i-span):i])
		after := total(x[i:min(len(x), i+span)])
		if length := math.Sqrt(dot(before, before) * dot(after, after)); length > 0 {
			out[i] = 1 - dot(before, after)/length
		}
		sum += out[i]
	}
	if len(x) > 1 {
		out[0] = sum / float64(len(x)-1)
	}
	return out
}

func total(rows [][]float64) []float64 {
	sum := make([]float64, len(rows[0]))
	for _, row := range rows {
		for j, v := range row {
			sum[j] += v
		}
	}
	return sum
}

// near is how many beats to either side a change of sound must outdo to be a
// turning point: with itself, more than a bar.
const near = 2

// turningPoints is how much sound and rhythm change at a beat, where they
// change more than at the beats round it and more than on average; 0 elsewhere.
// Arrangements change with the bar.
func turningPoints(s *Sound) []float64 {
	change := make([]float64, s.Len())
	for _, x := range [][]float64{contrast(s.Level, 2), contrast(s.Level, 4), contrast(s.Onset, 4)} {
		for i, v := range standardize(x) {
			change[i] += v
		}
	}
	out := make([]float64, len(change))
	for i, v := range change {
		if v > 0 && v >= slices.Max(change[max(0, i-near):min(len(change), i+near+1)]) {
			out[i] = v
		}
	}
	return out
}

// contrast is the distance between the means of the span rows before and after
// each row; nothing comes before the first.
func contrast(x [][]float64, span int) []float64 {
	out := make([]float64, len(x))
	for i := 1; i < len(x); i++ {
		from, to := max(0, i-span), min(len(x), i+span)
		before, after := total(x[from:i]), total(x[i:to])
		for j := range before {
			d := after[j]/float64(to-i) - before[j]/float64(i-from)
			out[i] += d * d
		}
		out[i] = math.Sqrt(out[i])
	}
	return out
}

// kickRange is the index of the kick in spectral.Ranges.
const kickRange = 0

func onBeat(s *Sound) []float64 {
	out := make([]float64, s.Len())
	for i, row := range s.Onset {
		out[i] = row[kickRange*Parts]
	}
	return out
}

// offBeat is the mean onset of all ranges between a beat and the next.
func offBeat(s *Sound) []float64 {
	out := make([]float64, s.Len())
	for i, row := range s.Onset {
		for j, v := range row {
			if j%Parts != 0 {
				out[i] += v
			}
		}
	}
	return out
}

// standardize brings x to mean 0 and standard deviation 1, no further out
// than widest; all 0 when x does not vary.
func standardize(x []float64) []float64 {
	const still = 1e-9 // deviation below which x counts as constant
	out := make([]float64, len(x))
	if len(x) == 0 {
		return out
	}
	mean, square := 0.0, 0.0
	for _, v := range x {
		mean += v / float64(len(x))
	}
	for _, v := range x {
		square += (v - mean) * (v - mean) / float64(len(x))
	}
	deviation := math.Sqrt(square)
	if deviation < still {
		return out
	}
	for i, v := range x {
		out[i] = min(widest, max(-widest, (v-mean)/deviation))
	}
	return out
}
