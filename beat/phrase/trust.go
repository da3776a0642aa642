package phrase

import "math"

// The log-odds of a start among all lists are trusted after an offset and a
// slope: clues that are wrong together make the chain too sure. The first start
// is in every list; it is trusted after where the second one is, with an offset
// of its own, since music that begins with its beat begins a phrase. Fitted by
// 'beat/learn/phrases trust' to music that the weights were not fitted to.
//
// Ref: Platt 1999, "Probabilistic outputs for support vector machines" (from
// memory).
const (
	trustOffset = -0.25
	trustSlope  = 1.01
	firstOffset = 1.28
	firstSlope  = 0.94
)

// Surest is a probability beyond which no chain is believed.
const Surest = 0.999

// LogOdds of a probability, kept away from certainty.
func LogOdds(p float64) float64 {
	p = min(Surest, max(1-Surest, p))
	return math.Log(p / (1 - p))
}

// trusted is how far a start of some chance is to be trusted, 0-1.
func trusted(chance float64) float64 { return sigmoid(trustOffset + trustSlope*LogOdds(chance)) }

// trustedFirst is how far the first start is to be trusted, by the chance of
// the second.
func trustedFirst(second float64) float64 { return sigmoid(firstOffset + firstSlope*LogOdds(second)) }

func sigmoid(x float64) float64 { return 1 / (1 + math.Exp(-x)) }
