package studio

import (
	"math"

	"onphrase/beat/learn/score"
)

// compress turns loud moments down.
func compress(r score.Rand, x []float32) {
	threshold, ratio := r.Between(0.05, 0.4), r.Between(1.5, 10)
	attack, release := coefficient(r.Between(0.001, 0.04)), coefficient(r.Between(0.05, 0.5))
	env := 0.0
	for i, v := range x {
		a := math.Abs(float64(v))
		if a > env {
			env += attack * (a - env)
		} else {
			env += release * (a - env)
		}
		if env > threshold {
			x[i] = float32(float64(v) * math.Pow(env/threshold, 1/ratio-1))
		}
	}
}

// coefficient of a one-pole follower with a time constant [s].
func coefficient(seconds float64) float64 { return 1 - math.Exp(-1/(seconds*Rate)) }

// clip drives the peaks into a hard limit.
func clip(r score.Rand, x []float32) {
	gain := float32(math.Pow(10, r.Between(0, 10)/20))
	for i, v := range x {
		x[i] = max(-1, min(1, v*gain))
	}
}

// room adds reverberation: four combs and two all-passes.
//
// Ref: Schroeder 1962, "Natural sounding artificial reverberation".
func room(r score.Rand, x []float32) {
	size, decay := r.Between(0.4, 1.6), r.Between(0.15, 2.2)
	wet := float32(r.Between(0.03, 0.35))
	sum := make([]float32, len(x))
	for _, ms := range []float64{29.7, 37.1, 41.1, 43.7} {
		delay := ms / 1000 * size
		comb(sum, x, int(delay*Rate), float32(math.Pow(0.001, delay/decay)))
	}
	allPass(sum, Rate/200, 0.7)
	allPass(sum, Rate/590, 0.7)
	for i := range x {
		x[i] += wet * 0.5 * sum[i]
	}
}

func comb(sum, x []float32, d int, feedback float32) {
	buf := make([]float32, d)
	damped := float32(0)
	for i, v := range x {
		y := buf[i%d]
		damped += 0.6 * (y - damped)
		buf[i%d] = v + feedback*damped
		sum[i] += y
	}
}

func allPass(x []float32, d int, g float32) {
	buf := make([]float32, d)
	for i, v := range x {
		y := buf[i%d]
		buf[i%d] = v + g*y
		x[i] = y - g*buf[i%d]
	}
}

// fade turns the start up and the end down, now and then.
func fade(r score.Rand, x []float32) {
	if n := int(r.Between(1, 10) * Rate); r.Chance(0.1) && n < len(x) {
		for i := range n {
			x[i] *= float32(i) / float32(n)
		}
	}
	if n := int(r.Between(1, 12) * Rate); r.Chance(0.15) && n < len(x) {
		for i := range n {
			x[len(x)-1-i] *= float32(i) / float32(n)
		}
	}
}

// Normalise brings the greatest sample of a track to full scale, in place.
func Normalise(x []float32) { scale(x, 1) }

// scale brings the greatest sample to peak.
func scale(x []float32, peak float32) {
	top := float32(1e-9)
	for _, v := range x {
		top = max(top, v, -v)
	}
	for i := range x {
		x[i] *= peak / top
	}
}
