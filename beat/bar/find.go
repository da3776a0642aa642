package bar

import (
	"math"
	"slices"
)

const (
	// switchCost is what a change of the bar's phase costs [log-units]: about
	// 15 bars of clear evidence. A track may slip (a bar of 2, a beat lost in
	// a break), but a solo or a bridge must not turn its bars around. With a
	// beat dropped in the middle of 281 tracks, count 1 has F .934 at 25 and
	// .932 at 40; on 132 tracks as the analysis counts them, .927 and .936. In 76
	// produced songs whose count 1 stays, it shifts in 3 at 40 and in 1 at 60.
	switchCost = 60

	// seamCost is the same where one tempo ends and the next begins: bars may
	// start afresh there, but in most music they go on.
	seamCost = 6
)

// Bars says where the bars of a track begin.
type Bars struct {
	Meter     int     // beats in a bar: 4, 3, or 2 dotted quarters
	BeatInBar []int   // 1..Meter for every beat
	Trust     float64 // 0-1, that the ones are right, given right beats
}

// Find counts the bars of a track. The evidence of the whole track decides the
// meter and the phase of the bars; the phase may change within the track only
// for much contrary evidence, or for little at a seam, the first beat of
// another tempo.
//
// Ref: the phase vote follows Davies & Plumbley 2006, "A spectral difference
// approach to downbeat extraction in musical audio"; the Viterbi over bar
// phase is that of the bar pointer models (Krebs, Böck & Widmer 2013) with
// whole beats for its step.
func Find(s *Sound, seams ...int) Bars {
	evidence := Evidence(s)
	return find(evidence, threes(evidence, s), triple(s), seams)
}

// find counts bars by the evidence of each beat, and by how much speaks for
// bars of three [log-odds].
func find(evidence []float64, threes float64, triple bool, seams []int) Bars {
	b := Bars{Meter: meter(evidence, threes, triple)}
	b.BeatInBar = viterbi(evidence, b.Meter, seams)
	b.Trust = trust(evidence, b) * sureOf(threes)
	return b
}

// sureOf is the probability of the likelier of two answers, by log-odds.
func sureOf(odds float64) float64 { return 1 / (1 + math.Exp(-math.Abs(odds))) }

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
// that are wrong together make it too sure. Fitted by 'beat/learn/phrases trust'
// to 132 tracks that the weights were not fitted to.
//
// Ref: Guo, Pleiss, Sun & Weinberger 2017, "On calibration of modern neural
// networks" (temperature scaling; from memory).
const sureness = 0.92

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
