package bar

import (
	"math"
	"slices"
)

const (
	// fourFour is the meter taken unless there is strong evidence for three.
	fourFour   = 4
	threeFour  = 3
	leastBeats = 12 // fewer cannot tell three from four

	// switchCost is what a change of the bar's phase costs [log-units]: about
	// six bars of clear evidence. A track may slip (a bar of 2, a beat lost in
	// a break), but a solo or a bridge must not turn its bars around. Measured
	// by dropping a beat in the middle of 200 tracks: 15 and less turn bars
	// that were right, 40 and more miss the dropped beat more often.
	switchCost = 25

	// seamCost is the same where one tempo ends and the next begins: bars may
	// start afresh there, but in most music they go on.
	seamCost = 6

	// threeMargin is how much better a count of three must fit than one of
	// four [standard errors].
	threeMargin = 1.5
)

// Bars says where the bars of a track begin.
type Bars struct {
	Meter     int     // beats in a bar: 3 or 4
	BeatInBar []int   // 1..Meter for every beat
	Trust     float64 // 0-1, that the ones are right, given right beats
}

// Find counts the bars of a track from the evidence of its beats, as Evidence
// gives it. The evidence of the whole track decides the phase of the bars; it
// may change within the track only for much contrary evidence, or for little
// at a seam, the first beat of another tempo.
//
// Ref: the phase vote follows Davies & Plumbley 2006, "A spectral difference
// approach to downbeat extraction in musical audio"; the Viterbi over bar
// phase is that of the bar pointer models (Krebs, Böck & Widmer 2013) with
// whole beats for its step.
func Find(evidence []float64, seams ...int) Bars {
	meter := fourFour
	if len(evidence) >= leastBeats && combFit(evidence, threeFour) > combFit(evidence, fourFour)+threeMargin {
		meter = threeFour
	}
	b := Bars{Meter: meter, BeatInBar: viterbi(evidence, meter, seams)}
	b.Trust = trust(evidence, b)
	return b
}

// combFit is how far the evidence on the best phase of every n-th beat stands
// above chance [standard errors].
func combFit(evidence []float64, n int) float64 {
	square := 0.0
	for _, v := range evidence {
		square += v * v
	}
	if square == 0 {
		return 0
	}
	deviation := math.Sqrt(square / float64(len(evidence)))
	best := math.Inf(-1)
	for phase := range n {
		sum, count := 0.0, 0.0
		for i := phase; i < len(evidence); i += n {
			sum += evidence[i]
			count++
		}
		best = max(best, sum/(deviation*math.Sqrt(count)))
	}
	return best
}

// viterbi is the likeliest position in the bar, 1..meter, of each beat.
func viterbi(evidence []float64, meter int, seams []int) []int {
	score := make([]float64, meter) // of the best path that ends in this position, from 0
	from := make([][]int, len(evidence))
	for i, e := range evidence {
		next := make([]float64, meter)
		from[i] = make([]int, meter)
		best := argmax(score)
		cost := float64(switchCost)
		if slices.Contains(seams, i) {
			cost = seamCost
		}
		for pos := range meter {
			prev := (pos + meter - 1) % meter
			if i > 0 && score[best]-cost > score[prev] {
				prev = best
				next[pos] -= cost
			}
			from[i][pos] = prev
			if i > 0 {
				next[pos] += score[prev]
			}
			if pos == 0 {
				next[pos] += e
			}
		}
		score = next
	}
	bib := make([]int, len(evidence))
	pos := argmax(score)
	for i := len(evidence) - 1; i >= 0; i-- {
		bib[i] = pos + 1
		pos = from[i][pos]
	}
	return bib
}

func argmax(x []float64) int {
	best := 0
	for i, v := range x {
		if v > x[best] {
			best = i
		}
	}
	return best
}

// sureness is how far the evidence is to be believed as a probability: clues
// that are wrong together make it too sure. Fitted by 'beat/learn/phrases fit'
// to 120 tracks that the weights were not fitted to.
//
// Ref: Guo, Pleiss, Sun & Weinberger 2017, "On calibration of modern neural
// networks" (temperature scaling; from memory).
const sureness = 0.7

// trust is the probability of the chosen phase among all phases, after the
// logistic model that the weights of the evidence belong to. The phases are
// taken relative to the bars found, so that a slip within the track does not
// blur them.
func trust(evidence []float64, b Bars) float64 {
	mean, count := make([]float64, b.Meter), make([]float64, b.Meter)
	for i, e := range evidence {
		p := b.BeatInBar[i] - 1
		mean[p] += e
		count[p]++
	}
	sum := 0.0
	for p := range mean {
		if count[p] == 0 {
			return 1 / float64(b.Meter)
		}
		sum += math.Exp(sureness * (mean[p]/count[p] - mean[0]/count[0]))
	}
	return 1 / sum
}
