package phrase

import "math"

// Signs tell how far a phrase start is to be trusted: a constant; the log-odds of
// its share of all lists; its own log-odds, from the clues alone; the mean of
// those of all starts of the track; and 1 if it is the first. The first start is
// in every list: in its place the first two of these are those of the second.
type Signs [5]float64

// trustWeights are the log-odds that each sign adds. A chain is too sure where
// clues are wrong together; a start that little of its own speaks for may rest
// on a count that is wrong; and music that begins with its beat begins a phrase.
// Fitted by 'beat/learn/phrases trust' to music that the network was not trained
// on.
//
// Ref: Platt 1999, "Probabilistic outputs for support vector machines" (from
// memory).
var trustWeights = Signs{0.46, 0.60, 0.04, 0.17, 1.45}

const (
	// surest is a probability beyond which no chain is believed.
	surest = 0.999
	// leastOwn and mostOwn are the log-odds of a start beyond which nothing
	// more is told.
	leastOwn, mostOwn = -6.0, 3.0
	// aloneChance stands for that of the second phrase where there is only one.
	aloneChance = 0.5
)

// LogOdds of a probability, kept away from certainty.
func LogOdds(p float64) float64 {
	p = min(surest, max(1-surest, p))
	return math.Log(p / (1 - p))
}

// signsOf gives the signs of each start of a list, by the log-odds and the
// chance of every bar.
func signsOf(starts []int, odds, chance []float64) []Signs {
	out := make([]Signs, len(starts))
	mean := 0.0
	for i, s := range starts {
		own := min(mostOwn, max(leastOwn, odds[s]))
		out[i] = Signs{1, LogOdds(chance[s]), own, 0, 0}
		if i > 0 {
			mean += own / float64(len(starts)-1)
		}
	}
	switch {
	case len(starts) > 1:
		out[0] = Signs{1, out[1][1], out[1][2], 0, 1}
	case len(starts) == 1:
		out[0] = Signs{1, LogOdds(aloneChance), leastOwn, 0, 1}
	}
	for i := range out {
		out[i][3] = mean
	}
	return out
}

// trust is the probability that a phrase starts where the signs are such.
func (s Signs) trust() float64 {
	logOdds := 0.0
	for i, v := range s {
		logOdds += trustWeights[i] * v
	}
	return 1 / (1 + math.Exp(-logOdds))
}
