package bar

import "math"

// The weights say how much a beat that stands out by one standard deviation
// speaks for being count 1, in log-units for a whole track of such beats.
// They are a conditional logistic model: which of the four phases is right,
// given the mean of each clue at that phase. Fitted with a light ridge (0.3)
// to 182 rendered tracks, 126 of them of grooves and songs outside the test
// corpus; fitted to those 126 alone they serve the corpus as well.
const (
	harmonyWeight = 1.6  // the chord changes: chroma before and after
	bassWeight    = 2.0  // the bass changes its note
	kickWeight    = 1.3  // the kick drum sounds
	fillWeight    = -0.9 // sound begins between this beat and the next, as in a fill

	// onesWeight was set by hand: the ear counts as much as everything else
	// together. It was trained on other music than the rest was fitted to.
	onesWeight = 4
)

// widest is how many standard deviations one beat may stand out by: a single
// crash must not outvote a song.
const widest = 3

// changeSpans are the stretches before and after a beat that are compared
// for a change [beats].
var changeSpans = [...]int{1, 2, 4}

// Evidence says for each beat how much it sounds like count 1, around 0 over
// a track, in the log-units of the weights.
func Evidence(s *Sound) []float64 {
	clues := []struct {
		weight float64
		values []float64
	}{
		{harmonyWeight, changes(s.Chroma)},
		{bassWeight, changes(s.Bass)},
		{kickWeight, onBeat(s)},
		{fillWeight, offBeat(s)},
		{onesWeight, s.One},
	}
	sum := make([]float64, s.Len())
	for _, c := range clues {
		for i, v := range standardize(c.values) {
			sum[i] += c.weight * v
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
