package beat

import (
	"math"
	"slices"

	"onphrase/beat/grid"
	"onphrase/beat/internal/dsp"
)

const (
	looseOver   = 4    // counts on either side that certainty is averaged over: two bars
	fewestLoose = 12   // counts, of which averaging adds some: less is a fill
	leastHeld   = 0.3  // activation around a count below which more are wrong than right (beat/learn/trust)
	doubtful    = 0.45 // the same where the counts before and after do not agree
	sideOver    = 8    // counts before and after that tell the tempo there
	mostMissed  = 0.15 // of a count, by which sides that agree may miss each other
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
	around := smooth(strength)
	half := (doubtful + max(doubtful, dsp.Median(around))) / 2
	var out [][2]float64
	for k := 0; k < len(around); k++ {
		first := k
		for k < len(around) && around[k] < half {
			k++
		}
		if k-first < fewestLoose || p.carried(first, k) {
			continue
		}
		least := leastHeld
		if p.parted(first, k) {
			least = doubtful
		}
		if slices.Min(around[first:k]) >= least {
			continue
		}
		from, to := first, k // what it hardly hears
		for around[from] >= doubtful {
			from++
		}
		for around[to-1] >= doubtful {
			to--
		}
		if !grid.Keep(p.Beats[from:to], hits[from:to]) {
			out = append(out, [2]float64{p.Beats[first], p.Beats[k-1] + p.Period})
		}
	}
	return out
}

// smooth is x averaged over some counts to either side.
func smooth(x []float64) []float64 {
	out := make([]float64, len(x))
	for k := range out {
		out[k] = average(x[max(0, k-looseOver):min(len(x), k+looseOver+1)])
	}
	return out
}

// parted reports whether counts from..to-1 do not fit between those before and
// after: at the tempo there, they would be others.
func (p part) parted(from, to int) bool {
	if from < sideOver || to+sideOver > len(p.Beats) {
		return false
	}
	before := (p.Beats[from] - p.Beats[from-sideOver]) / sideOver
	after := (p.Beats[to+sideOver-1] - p.Beats[to-1]) / sideOver
	period := (before + after) / 2
	return math.Abs(p.Beats[to-1]-p.Beats[from]-float64(to-1-from)*period) > mostMissed*period
}

// carried reports whether counts from..to-1 are all on one line that comes from
// before them and goes on after them; at an end of the part, either is enough.
func (p part) carried(from, to int) bool {
	for _, l := range p.Lines {
		comes := from == 0 || l.From <= from-sideOver
		goes := to == len(p.Beats) || l.To >= to+sideOver
		if from >= l.From && to <= l.To && comes && goes {
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
