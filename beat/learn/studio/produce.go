package studio

import (
	"math"

	"onphrase/beat/learn/score"
)

// Produce treats a rendered track in place. speech, which may be nil, is laid
// over part of it.
func Produce(seed uint64, x, speech []float32) {
	r := score.NewRand(seed, 3)
	scale(x, 1)
	if r.Chance(0.4) {
		room(r, x)
	}
	if r.Chance(0.6) {
		equalise(r, x)
	}
	if speech != nil {
		add(x, speech, r.Between(-14, 4), r.IntN(max(1, len(x)-len(speech))))
	}
	if r.Chance(0.4) {
		scale(x, 1)
		compress(r, x)
	}
	if r.Chance(0.3) {
		add(x, Noise(r, len(x)), r.Between(-50, -12), 0)
	}
	if r.Chance(0.25) {
		narrow(r, x)
	}
	if r.Chance(0.25) {
		scale(x, 1)
		clip(r, x)
	}
	fade(r, x)
	scale(x, float32(math.Pow(10, r.Between(-30, 0)/20)))
}
