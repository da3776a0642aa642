package phrase

import "math"

// The log-odds of a start among all lists are trusted after an offset and a
// slope: clues that are wrong together make the chain too sure. Fitted by
// 'beat/learn/phrases trust' to music that the weights were not fitted to.
//
// Ref: Platt 1999, "Probabilistic outputs for support vector machines" (from
// memory).
const (
	trustOffset = -0.43
	trustSlope  = 0.93
)

// trusted is how far a start of some chance is to be trusted, 0-1.
func trusted(chance float64) float64 {
	const most = 0.999 // no chain is surer
	chance = min(most, max(1-most, chance))
	return 1 / (1 + math.Exp(-trustOffset-trustSlope*math.Log(chance/(1-chance))))
}
