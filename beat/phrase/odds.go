package phrase

// odds gives the log-odds of each bar.
//
// The weights of the network maximise the likelihood of the true list of
// phrases under the chain of segment (a conditional random field, given the
// true bars), over songs outside the test corpus whose phrases are known:
// 'beat/learn/phrases fit'. Its README has the figures.
//
// Ref: Lafferty, McCallum & Pereira 2001, "Conditional random fields"; Sarawagi
// & Cohen 2004, "Semi-Markov conditional random fields" (both from memory).
func odds(clues [][]float64) []float64 {
	n := trained()
	out := make([]float64, len(clues[0]))
	for i, input := range n.Inputs(clues) {
		out[i], _ = n.Odds(input)
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
var firstShare = [longest + 1]float64{0, 0.01, 0.03, 0.005, 0.25, 0.005, 0.015, 0.005, 0.68}

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
