// Package studio makes rendered music sound like a produced recording, good or
// bad: equaliser, room, compression, clipping, noise, narrow bands, fades.
package studio

import (
	"math"

	"onphrase/beat/learn/score"
)

// Rate is the sample rate of everything here [Hz].
const Rate = 22050

// biquad is a second-order filter.
//
// Ref: Bristow-Johnson, "Cookbook formulae for audio EQ biquad filter
// coefficients".
type biquad struct{ b0, b1, b2, a1, a2 float64 }

func lowPass(f, q float64) biquad {
	w, alpha := corner(f, q)
	c := math.Cos(w)
	return normalised((1-c)/2, 1-c, (1-c)/2, 1+alpha, -2*c, 1-alpha)
}

func highPass(f, q float64) biquad {
	w, alpha := corner(f, q)
	c := math.Cos(w)
	return normalised((1+c)/2, -1-c, (1+c)/2, 1+alpha, -2*c, 1-alpha)
}

// peak raises or lowers the neighbourhood of f by gain [dB].
func peak(f, q, gain float64) biquad {
	w, alpha := corner(f, q)
	a, c := math.Pow(10, gain/40), math.Cos(w)
	return normalised(1+alpha*a, -2*c, 1-alpha*a, 1+alpha/a, -2*c, 1-alpha/a)
}

func corner(f, q float64) (w, alpha float64) {
	w = 2 * math.Pi * min(f, 0.47*Rate) / Rate
	return w, math.Sin(w) / (2 * q)
}

func normalised(b0, b1, b2, a0, a1, a2 float64) biquad {
	return biquad{b0 / a0, b1 / a0, b2 / a0, a1 / a0, a2 / a0}
}

func (b biquad) apply(x []float32) {
	var x1, x2, y1, y2 float64
	for i, v := range x {
		y := b.b0*float64(v) + b.b1*x1 + b.b2*x2 - b.a1*y1 - b.a2*y2
		x1, x2, y1, y2 = float64(v), x1, y, y1
		x[i] = float32(y)
	}
}

// equalise bends the spectrum at one to four places.
func equalise(r score.Rand, x []float32) {
	for range 1 + r.IntN(4) {
		peak(60*math.Exp2(7*r.Float64()), r.Between(0.4, 2), r.Between(-10, 8)).apply(x)
	}
}

// narrow cuts the ends of the spectrum as small loudspeakers and poor copies do.
func narrow(r score.Rand, x []float32) {
	if r.Chance(0.6) {
		lowPass(r.Between(1800, 8000), 0.7).apply(x)
	}
	if r.Chance(0.6) {
		highPass(r.Between(60, 350), 0.7).apply(x)
	}
}
