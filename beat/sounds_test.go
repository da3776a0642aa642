package beat_test

import (
	"math"
	"math/rand/v2"
)

// Sounds without a beat, half as long as those of fill.

const short = seconds / 2 // [s]

// quiet is a clip of silence.
func quiet() *clip {
	return &clip{rate: testRate, channels: 1, samples: make([]float32, short*testRate)}
}

// ring adds a decaying tone from a time [s] on.
func (c *clip) ring(at, pitch, level, fall float64) {
	first := int(at * testRate)
	for i := 0; i < int(5*fall*testRate) && first+i < len(c.samples); i++ {
		t := float64(i) / testRate
		c.samples[first+i] += float32(level * math.Exp(-t/fall) * (math.Sin(2*math.Pi*pitch*t) +
			0.3*math.Sin(6*math.Pi*pitch*t)))
	}
}

// puff adds a burst of noise.
func (c *clip) puff(r *rand.Rand, at, level, fall float64) {
	first := int(at * testRate)
	for i := 0; i < int(5*fall*testRate) && first+i < len(c.samples); i++ {
		c.samples[first+i] += float32(level * math.Exp(-float64(i)/(fall*testRate)) * r.NormFloat64())
	}
}

// atRandom calls play at times a wait apart that is exponential, as drops fall.
func atRandom(r *rand.Rand, mean float64, play func(at float64)) {
	for at := mean * r.ExpFloat64(); at < short; at += mean * r.ExpFloat64() {
		play(at)
	}
}

// swells is noise of any colour that comes and goes.
func swells(r *rand.Rand) *clip {
	c, colour, rate, last := quiet(), r.Float64(), 0.05+0.2*r.Float64(), 0.0
	for i := range c.samples {
		last = colour*last + (1-colour*0.9)*r.NormFloat64()
		c.samples[i] = float32(0.1 * last * (1 + 0.8*math.Sin(2*math.Pi*rate*float64(i)/testRate)))
	}
	return c
}

// waves are swells of noise some seconds apart, as the sea's.
func waves(r *rand.Rand) *clip {
	c := quiet()
	for at := 0.0; at < short; at += 3 + 4*r.Float64() {
		long := 2 + 3*r.Float64()
		for i := range int(long * testRate) {
			if n := int(at*testRate) + i; n < len(c.samples) {
				c.samples[n] += float32(0.2 * r.NormFloat64() * math.Pow(math.Sin(math.Pi*float64(i)/(long*testRate)), 2))
			}
		}
	}
	return c
}

// drone is a chord that holds, a little out of tune and trembling.
func drone(r *rand.Rand) *clip {
	c := quiet()
	for range 3 + r.IntN(4) {
		pitch, rate, phase := 60*math.Pow(2, 4*r.Float64()), 0.1+0.4*r.Float64(), 6*r.Float64()
		for i := range c.samples {
			t := float64(i) / testRate
			c.samples[i] += float32(0.08 * math.Sin(2*math.Pi*pitch*t) * (1 + 0.4*math.Sin(2*math.Pi*rate*t+phase)))
		}
	}
	return c
}

// crowd claps, few or many.
func crowd(r *rand.Rand) *clip {
	c := quiet()
	atRandom(r, math.Pow(10, -0.5-2*r.Float64()),
		func(at float64) { c.puff(r, at, 0.05+0.2*r.Float64(), 0.005+0.01*r.Float64()) })
	return c
}

// drops ring.
func drops(r *rand.Rand) *clip {
	c := quiet()
	atRandom(r, 0.1+0.6*r.Float64(), func(at float64) {
		c.ring(at, 400*math.Pow(2, 2*r.Float64()), 0.1+0.3*r.Float64(), 0.03+0.1*r.Float64())
	})
	return c
}

// freely is one who plays notes as he likes.
func freely(r *rand.Rand) *clip {
	c, at := quiet(), 0.0
	for at < short {
		c.ring(at, 220*math.Pow(2, float64(r.IntN(15))/12), 0.2+0.2*r.Float64(), 0.3+0.5*r.Float64())
		at += 0.5 * math.Exp(0.7*r.NormFloat64())
	}
	return c
}

// chordsAtRandom is the same with chords.
func chordsAtRandom(r *rand.Rand) *clip {
	c := quiet()
	atRandom(r, 0.8+r.Float64(), func(at float64) {
		root := 110 * math.Pow(2, float64(r.IntN(12))/12)
		for _, above := range []float64{0, 4, 7, 12} {
			c.ring(at, root*math.Pow(2, above/12), 0.12, 0.5+r.Float64())
		}
	})
	return c
}

// babble is syllables in a voice's rhythm, with pauses for breath.
func babble(r *rand.Rand) *clip {
	c, pitch := quiet(), 100+100*r.Float64()
	for at := 0.3; at < short-1; {
		for range 4 + r.IntN(12) {
			long := 0.08 + 0.15*r.Float64()
			if r.IntN(2) == 0 {
				c.puff(r, at, 0.05, 0.02)
			}
			for _, formant := range []float64{3, 5, 9, 17} {
				c.ring(at+0.02, pitch*formant*(0.9+0.2*r.Float64()), 0.08, long/3)
			}
			at += long + 0.06*r.ExpFloat64()
		}
		at += 0.3 + 0.8*r.Float64()
	}
	return c
}

// rustle is many soft sounds.
func rustle(r *rand.Rand) *clip {
	c := quiet()
	atRandom(r, 0.03+0.1*r.Float64(), func(at float64) {
		c.puff(r, at, 0.02+0.1*r.Float64()*r.Float64(),
			0.01+0.15*r.Float64())
	})
	return c
}

// glides are tones that slide, as the wind's or a siren's.
func glides(r *rand.Rand) *clip {
	c, phase, rate, depth := quiet(), 0.0, 0.03+0.1*r.Float64(), 0.5+r.Float64()
	for i := range c.samples {
		t := float64(i) / testRate
		phase += 300 * math.Pow(2, depth*math.Sin(2*math.Pi*rate*t)) / testRate
		c.samples[i] = float32(0.2*math.Sin(2*math.Pi*phase) + 0.02*r.NormFloat64())
	}
	return c
}
