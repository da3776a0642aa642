package beat

import (
	"onphrase/beat/grid"
	"onphrase/beat/internal/dsp"
)

const (
	looseOver   = 4    // counts on either side that certainty is averaged over: two bars
	fewestLoose = 12   // counts, of which averaging adds some: less is a fill
	leastHeld   = 0.45 // activation around a count below which it is in doubt (beat/learn/trust)
)

// loose are the stretches of a part in which its beats are not to be trusted,
// from-to [s]: the ear hardly hears them, the attacks do not keep to them, and
// no straight line carries them there from where they do. strength is how strong
// the ear hears each, 0-1.
//
// A stretch reaches to where the ear hears half as well as usual: what it heard
// before goes on in its memory for some counts.
func (p part) loose(strength []float64, hits []grid.Hit) [][2]float64 {
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
		first, core, last := k, -1, -1 // core to last is what it hardly hears
		for ; k < len(around) && around[k] < half; k++ {
			if around[k] < leastHeld {
				if core < 0 {
					core = k
				}
				last = k + 1
			}
		}
		if core < 0 || k-first < fewestLoose || p.carried(first, k) || grid.Keep(p.Beats[core:last], hits[core:last]) {
			continue
		}
		out = append(out, [2]float64{p.Beats[first], p.Beats[k-1] + p.Period})
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
