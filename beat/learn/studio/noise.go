package studio

import (
	"math"

	"onphrase/beat/learn/score"
)

// rms is the root of the mean square.
func rms(x []float32) float64 {
	sum := 1e-12
	for _, v := range x {
		sum += float64(v) * float64(v)
	}
	return math.Sqrt(sum / float64(max(1, len(x))))
}

// Noise is white, pink, brown or a hum, by chance; its RMS is 1.
func Noise(r score.Rand, n int) []float32 {
	x := make([]float32, n)
	kind := r.IntN(4)
	var b0, b1, b2, brown float64
	hum := r.Between(45, 65)
	for i := range x {
		w := r.Float64()*2 - 1
		switch kind {
		case 0:
			x[i] = float32(w)
		case 1: // Ref: Kellet's economy filter for pink noise (from memory)
			b0 = 0.99765*b0 + w*0.0990460
			b1 = 0.96300*b1 + w*0.2965164
			b2 = 0.57000*b2 + w*1.0526913
			x[i] = float32(b0 + b1 + b2 + w*0.1848)
		case 2:
			brown = 0.995*brown + w
			x[i] = float32(brown)
		default:
			t := 2 * math.Pi * hum * float64(i) / Rate
			x[i] = float32(math.Sin(t) + 0.5*math.Sin(2*t) + 0.3*math.Sin(3*t) + 0.2*w)
		}
	}
	gain := float32(1 / rms(x))
	for i := range x {
		x[i] *= gain
	}
	return x
}

// add mixes y into x at a level relative to x [dB].
func add(x, y []float32, level float64, from int) {
	gain := float32(math.Pow(10, level/20) * rms(x) / rms(y))
	for i, v := range y {
		if from+i >= len(x) {
			return
		}
		x[from+i] += gain * v
	}
}

// Applause is many hands clapping at their own times, as after a class.
func Applause(r score.Rand, n int) []float32 {
	x := make([]float32, n)
	hands := 3 + r.IntN(60)
	for range hands {
		period, f := r.Between(0.16, 0.42), r.Between(700, 2600)
		loud := r.Between(0.2, 1)
		for t := r.Between(0, 2); t < float64(n)/Rate; t += period * (1 + 0.15*r.NormFloat64()) {
			hand(r, x, int(max(0, t)*Rate), f, loud)
		}
	}
	return x
}

// Drops are single clicks and thuds at random times: rain, crackle, a workshop.
func Drops(r score.Rand, n int) []float32 {
	x := make([]float32, n)
	rate := math.Exp2(r.Between(-1, 6)) // a second
	for t := 0.0; t < float64(n)/Rate; t += -math.Log(1-r.Float64()) / rate {
		hand(r, x, int(t*Rate), 100*math.Exp2(r.Between(0, 6)), r.Between(0.1, 1))
	}
	return x
}

// hand adds one short burst that rings at f.
func hand(r score.Rand, x []float32, from int, f, loud float64) {
	decay := r.Between(0.003, 0.02)
	phase := r.Float64()
	for i := 0; i < int(decay*5*Rate) && from+i < len(x); i++ {
		t := float64(i) / Rate
		v := 0.5*(r.Float64()*2-1) + math.Sin(2*math.Pi*(f*t+phase))
		x[from+i] += float32(loud * v * math.Exp(-t/decay))
	}
}
