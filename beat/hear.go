package beat

import (
	"math"
	"slices"

	"onphrase/beat/bar"
	"onphrase/beat/ear"
	"onphrase/beat/pulse"
)

const (
	leastActive = 0.05 // activation below which the ends of a track hold no counts
	shortest    = 2.0  // [s]: less sound holds no counts
	nearFrames  = 2    // how far from a frame its peak may lie
)

// chain is a row of counts and their places in the bar.
type chain struct {
	beats    []float64 // [s]
	position []int     // 1..meter
	meter    int
}

// decode finds the likeliest counts of a track from an activation alone: of all
// chains of bars of 3 or 4 at any tempo, the one that it speaks for.
//
// Ref: Krebs, Böck & Widmer 2015, "An efficient state-space model for joint
// tempo and meter tracking"; both meters are tried and the likelier wins.
func decode(a ear.Activation) chain {
	from, to := 0, len(a.Beat)
	for from < to && a.Beat[from] < leastActive {
		from++
	}
	for to > from && a.Beat[to-1] < leastActive {
		to--
	}
	if float64(to-from) < shortest*a.FPS {
		return chain{}
	}
	best, out := pulse.Beats{Log: math.Inf(-1)}, chain{}
	for _, meter := range []int{3, 4} {
		model := pulse.Default(a.FPS)
		model.Meter = meter
		if b := model.Decode(a.Beat[from:to], a.One[from:to], model.SpanOf(slowest, fastest)); b.Log > best.Log {
			best, out.meter = b, meter
		}
	}
	out.position = best.Position
	for i, f := range best.Frames {
		t := peakNear(a.Beat, from+f) / a.FPS
		if i > 0 && t <= out.beats[i-1] {
			t = out.beats[i-1] + 1/a.FPS
		}
		out.beats = append(out.beats, t)
	}
	return out
}

// bars gives each beat the place of the nearest of the chain's.
func (c chain) bars(beats []float64) bar.Bars {
	b := bar.Bars{Meter: c.meter, BeatInBar: make([]int, len(beats))}
	for i, t := range beats {
		b.BeatInBar[i] = c.position[nearest(c.beats, t)]
	}
	return b
}

// nearest is the index of the time closest to t in an increasing list.
func nearest(times []float64, t float64) int {
	i, _ := slices.BinarySearch(times, t)
	if i == len(times) || i > 0 && t-times[i-1] < times[i]-t {
		return i - 1
	}
	return i
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
	return average(at(beats, x, fps))
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
