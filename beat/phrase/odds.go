package phrase

// clueWeights are the log-odds that a phrase starts at a bar for each standard
// deviation by which a clue stands out, startOdds the log-odds where none
// does.
//
// They maximise the likelihood of the true list of phrases under the chain of
// segment (a conditional random field, given the true bars), with a light
// ridge, over songs and arrangements outside the test corpus whose phrases are
// known, each source with the same weight: 'beat/learn/phrases fit'. Its README
// has the figures.
var clueWeights = [ClueCount]float64{0.16, 0.30, 0.47, 0.52, 0.91, 0.44, 0.32, 0.97, 0.35, 0.26, 0.24, 0.70}

const startOdds = -3.06

// odds gives the log-odds of each bar.
func odds(c [ClueCount][]float64) []float64 {
	out := make([]float64, len(c[0]))
	for i := range out {
		out[i] = startOdds
		for k, w := range clueWeights {
			out[i] += w * c[k][i]
		}
	}
	return out
}

// longest is the length of a whole phrase, and of the longest one there is:
// longer sections are several phrases [bars].
const longest = 8

// lengthShare is how often a phrase has each number of bars, 1 to longest.
//
// Ref: the sections of the 912 songs of Nieto et al. 2019, "The Harmonix Set"
// (6,470 sections of whole bars; 8 bars 2,941, 4 bars 868, 16 bars 862, 12
// bars 345, 10 bars 190, 9 bars 182, 6 bars 149, 7 bars 122), each taken as
// phrases of 8 bars and one of what is left. The shares of 3 and 5 bars are
// estimates.
var lengthShare = [longest + 1]float64{0, 0.03, 0.03, 0.01, 0.16, 0.01, 0.02, 0.015, 0.72}

// firstShare is the same of the first phrase. Music may begin with an
// introduction of half a phrase; it seldom begins with a lone bar (estimates).
var firstShare = [longest + 1]float64{0, 0.01, 0.03, 0.01, 0.28, 0.01, 0.02, 0.01, 0.63}

// shareAt is the share of phrases with as many bars as lie between bars from
// and to of a track of n bars. A last phrase may break off anywhere, under a
// fade or after a coda, so that all its lengths are alike.
func shareAt(from, to, n int) float64 {
	switch {
	case to == n:
		return 1.0 / longest
	case from == 0:
		return firstShare[to]
	}
	return lengthShare[to-from]
}
