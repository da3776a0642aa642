package beat

import (
	"math"

	"onphrase/beat/ear"
	"onphrase/beat/pulse"
)

const (
	leastActive = 0.05 // activation below which the ends of a track hold no counts
	shortest    = 2.0  // [s]: less sound holds no counts
	nearFrames  = 2    // how far from a frame its peak may lie
)

// counts are the likeliest counts of a track by ear alone [s]: of all chains of
// bars of 3 or 4 at any tempo, the one that the activation speaks for.
//
// Ref: Krebs, Böck & Widmer 2015, "An efficient state-space model for joint
// tempo and meter tracking"; both meters are tried and the likelier wins.
func counts(a ear.Activation) []float64 {
	from, to := 0, len(a.Beat)
	for from < to && a.Beat[from] < leastActive {
		from++
	}
	for to > from && a.Beat[to-1] < leastActive {
		to--
	}
	if float64(to-from) < shortest*a.FPS {
		return nil
	}
	best := pulse.Beats{Log: math.Inf(-1)}
	for _, meter := range []int{3, 4} {
		model := pulse.Default(a.FPS)
		model.Meter = meter
		if b := model.Decode(a.Beat[from:to], a.One[from:to], model.SpanOf(slowest, fastest)); b.Log > best.Log {
			best = b
		}
	}
	beats := make([]float64, len(best.Frames))
	for i, f := range best.Frames {
		beats[i] = peakNear(a.Beat, from+f) / a.FPS
		if i > 0 && beats[i] <= beats[i-1] {
			beats[i] = beats[i-1] + 1/a.FPS
		}
	}
	return beats
}

// peakNear is where x peaks around frame i, between frames by a parabola.
func peakNear(x []float64, i int) float64 {
	best := i
	for j := max(0, i-nearFrames); j <= min(len(x)-1, i+nearFrames); j++ {
		if x[j] > x[best] {
			best = j
		}
	}
	if best == 0 || best == len(x)-1 {
		return float64(best)
	}
	l, m, r := x[best-1], x[best], x[best+1]
	if bend := l - 2*m + r; bend < 0 && m >= l && m >= r {
		return float64(best) + 0.5*(l-r)/bend
	}
	return float64(best)
}

// at is the activation x at each beat [s]: its peak around there.
func at(beats, x []float64, fps float64) []float64 {
	out := make([]float64, len(beats))
	for i, t := range beats {
		f := int(math.Round(t * fps))
		for j := max(0, f-nearFrames); j <= min(len(x)-1, f+nearFrames); j++ {
			out[i] = max(out[i], x[j])
		}
	}
	return out
}

// certainty is the mean activation at the beats, 0-1.
func certainty(beats, x []float64, fps float64) float64 {
	sum := 0.0
	for _, v := range at(beats, x, fps) {
		sum += v
	}
	return sum / float64(max(1, len(beats)))
}

// between are the times from <= t < to of an increasing list [s].
func between(times []float64, from, to float64) []float64 {
	var out []float64
	for _, t := range times {
		if t >= from && t < to {
			out = append(out, t)
		}
	}
	return out
}
