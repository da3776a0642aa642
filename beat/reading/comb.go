package reading

import (
	"math"

	"onphrase/beat/tempo"
)

const (
	// steadyWithin is how little a curve must change for a comb [relative].
	steadyWithin = 0.01
	combSearch   = 0.003 // how far from the curve's median the comb's period is sought
	combSteps    = 12    // on either side
)

// comb is a row of beats with one period from start to end. A chain that
// follows the sound may slip to the off-beat where a break gives it nothing
// to hold on to; a comb cannot.
type comb struct{ phase, period float64 } // [frames]

// steadyPeriod is the one period of a stretch of music [frames], if it has
// one.
func steadyPeriod(activation []float64, start, fps float64, curve tempo.Curve) (period float64, ok bool) {
	first := curve.At(start)
	low, high := first, first
	for i := 0; i < len(activation); i += int(fps) {
		p := curve.At(start + float64(i)/fps)
		low, high = min(low, p), max(high, p)
	}
	if high > low*(1+steadyWithin) {
		return 0, false
	}
	middle := curve.At(start+float64(len(activation))/2/fps) * fps
	best := math.Inf(-1)
	for i := -combSteps; i <= combSteps; i++ {
		p := middle * (1 + combSearch*float64(i)/combSteps)
		if s := sharpness(fold(activation, p)); s > best {
			best, period = s, p
		}
	}
	return period, true
}

// combAt is the comb of a period on the phase with the most activation.
func combAt(activation []float64, period float64) comb {
	folded := fold(activation, period)
	n := len(folded)
	best := 0
	for i := range folded {
		if around(folded, i, n) > around(folded, best, n) {
			best = i
		}
	}
	return comb{phase: float64(best) * period / float64(n), period: period}
}

func around(x []float64, i, n int) float64 { return x[(i+n-1)%n] + x[i] + x[(i+1)%n] }

// fold adds up the activation by its place in the period, a frame a bin.
func fold(activation []float64, period float64) []float64 {
	bins := make([]float64, int(period))
	for i, a := range activation {
		turns := float64(i) / period
		at := (turns - math.Floor(turns)) * float64(len(bins))
		bins[min(int(at+0.5), len(bins))%len(bins)] += a
	}
	return bins
}

// sharpness is how much of a folded curve lies in few bins.
func sharpness(x []float64) float64 {
	sum, square := 0.0, 0.0
	for _, v := range x {
		sum += v
		square += v * v
	}
	if sum == 0 {
		return 0
	}
	return square * float64(len(x)) / (sum * sum)
}

// beats lists the comb's beats [s] within n frames, moved by a share of the
// period.
func (c comb) beats(shift float64, n int, start, fps float64) []float64 {
	var beats []float64
	at := math.Mod(c.phase+shift*c.period, c.period)
	for ; at < float64(n); at += c.period {
		beats = append(beats, start+at/fps)
	}
	return beats
}
