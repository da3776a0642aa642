package beat

import (
	"slices"

	"onphrase/beat/internal/dsp"
)

const (
	looseOver   = 4   // counts on either side that certainty is averaged over: two bars
	fewestLoose = 8   // counts: less is a fill
	leastHeld   = 0.3 // activation around a count below which more are wrong than right (beat/learn/trust)
)

// loose are the stretches of a part in which its beats are not to be trusted,
// from-to [s]: the ear hardly hears them, and no straight line carries them
// there from where it does. strength is how strong it hears each, 0-1.
//
// A stretch reaches to where the ear hears half as well as usual: what it heard
// before goes on in its memory for some counts.
func (p part) loose(strength []float64) [][2]float64 {
	if len(strength) == 0 {
		return nil
	}
	around := make([]float64, len(strength))
	for k := range around {
		around[k] = average(strength[max(0, k-looseOver):min(len(strength), k+looseOver+1)])
	}
	half := (leastHeld + max(leastHeld, dsp.Median(around))) / 2
	var out [][2]float64
	for k := 0; k < len(around); k++ {
		first := k
		for k < len(around) && around[k] < half {
			k++
		}
		if k-first >= fewestLoose && slices.Min(around[first:k]) < leastHeld && !p.carried(first, k) {
			out = append(out, [2]float64{p.Beats[first], p.Beats[k-1] + p.Period})
		}
	}
	return out
}

// carried reports whether counts from..to-1 are all on one line.
func (p part) carried(from, to int) bool {
	for _, l := range p.Lines {
		if from >= l.From && to <= l.To {
			return true
		}
	}
	return false
}

func average(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(max(1, len(x)))
}
