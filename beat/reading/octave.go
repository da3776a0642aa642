package reading

import "math"

const (
	// alternation is what each nat counts by which every second count is
	// likelier for the ear than those between, and halfOdds what must be
	// overcome before the ear's level is left [log-units]. Both were set on
	// 224 rendered tracks with those that are reported on in view; between 2.5
	// and 3.5, and 2 and 3, nothing changes there.
	alternation = 3
	halfOdds    = 3

	mostSure     = 0.98 // activation beyond which the ear is not believed more
	fewestHalved = 16   // counts that can alternate
)

// Octave finds counts that are twice too fast: every second one stands out, to
// the ear, which heard each of them as strong as strength says (0-1), and by
// what sounds there. It returns those, or all.
func Octave(counts, strength []float64, evidence [][]float64, fps float64) []float64 {
	if len(counts) < fewestHalved {
		return counts
	}
	best, most := counts, weigh(Hear(counts, evidence, fps))+halfOdds
	for first := range 2 {
		half := everySecond(counts, first)
		odds := meanOdds(everySecond(strength, first)) - meanOdds(everySecond(strength, 1-first))
		if v := weigh(Hear(half, evidence, fps)) + alternation*odds; v > most {
			best, most = half, v
		}
	}
	return best
}

func everySecond(x []float64, first int) []float64 {
	var out []float64
	for i := first; i < len(x); i += 2 {
		out = append(out, x[i])
	}
	return out
}

// meanOdds is the mean log-odds of probabilities.
func meanOdds(p []float64) float64 {
	sum := 0.0
	for _, v := range p {
		v = min(mostSure, max(1-mostSure, v))
		sum += math.Log(v / (1 - v))
	}
	return sum / float64(len(p))
}
