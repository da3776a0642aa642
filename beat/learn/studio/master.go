package studio

import (
	"math"

	"onphrase/beat/learn/score"
)

// Master adds to a produced track what loud modern mixes, worn tapes and small
// machines add. counts [s] is where the whole mix may duck, as under a
// compressor that listens to the kick.
func Master(r score.Rand, x []float32, counts []float64) {
	scale(x, 1)
	if r.Chance(0.18) {
		pump(r, x, counts)
	}
	if r.Chance(0.25) {
		bands(r, x)
	}
	if r.Chance(0.2) {
		filterSweep(r, x)
	}
	if r.Chance(0.12) {
		slap(r, x)
	}
	if r.Chance(0.12) {
		wow(r, x)
	}
	if r.Chance(0.3) {
		scale(x, 1)
		saturate(r, x)
	}
	if r.Chance(0.08) {
		coarse(r, x)
	}
	scale(x, float32(math.Pow(10, r.Between(-20, 0)/20)))
}

// pump turns the mix down at every count.
func pump(r score.Rand, x []float32, counts []float64) {
	depth, recover := r.Between(0.2, 0.85), r.Between(0.05, 0.25)
	next, last := 0, -1e9
	for i := range x {
		t := float64(i) / Rate
		for next < len(counts) && counts[next] <= t {
			last = counts[next]
			next++
		}
		x[i] *= float32(1 - depth*math.Exp(-(t-last)/recover))
	}
}

// bands compresses the bass and the rest apart.
func bands(r score.Rand, x []float32) {
	low := append([]float32(nil), x...)
	cut := lowPass(r.Between(90, 400), 0.7)
	cut.apply(low)
	for i := range x {
		x[i] -= low[i]
	}
	compress(r, low)
	compress(r, x)
	gain := float32(math.Pow(10, r.Between(-5, 5)/20))
	for i := range x {
		x[i] += gain * low[i]
	}
}

// filterSweep opens a filter over some seconds and lets go, as builds do.
func filterSweep(r score.Rand, x []float32) {
	const block = 512
	n := int(r.Between(4, 16) * Rate)
	from := r.IntN(max(1, len(x)-n))
	low, high := r.Between(80, 400), r.Between(1200, 6000)
	shape, up := highPass, r.Chance(0.6)
	if r.Chance(0.4) {
		shape = lowPass
	}
	var state biquadState
	for at := from; at < min(from+n, len(x)); at += block {
		p := float64(at-from) / float64(n)
		if !up {
			p = 1 - p
		}
		state.apply(shape(low*math.Pow(high/low, p), 0.8), x[at:min(at+block, len(x))])
	}
}

// biquadState carries a filter over from one block to the next.
type biquadState struct{ x1, x2, y1, y2 float64 }

func (s *biquadState) apply(b biquad, x []float32) {
	for i, v := range x {
		y := b.b0*float64(v) + b.b1*s.x1 + b.b2*s.x2 - b.a1*s.y1 - b.a2*s.y2
		s.x1, s.x2, s.y1, s.y2 = float64(v), s.x1, y, s.y1
		x[i] = float32(y)
	}
}

// slap repeats the mix once or a few times, shortly after.
func slap(r score.Rand, x []float32) {
	d, feedback := int(r.Between(0.05, 0.3)*Rate), float32(r.Between(0.1, 0.4))
	for i := d; i < len(x); i++ {
		x[i] += feedback * x[i-d]
	}
}

// wow lets the speed wander as that of a tape, by some tenths of a per cent: no
// sound moves by more than 3 ms.
func wow(r score.Rand, x []float32) {
	f, depth := r.Between(0.4, 6), r.Between(0.0002, 0.003)*Rate
	in := append([]float32(nil), x...)
	for i := range x {
		at := float64(i) + depth*math.Sin(2*math.Pi*f*float64(i)/Rate)
		k := int(math.Floor(at))
		if k < 0 || k+1 >= len(in) {
			continue
		}
		part := float32(at - float64(k))
		x[i] = in[k]*(1-part) + in[k+1]*part
	}
}

// saturate drives the mix into a soft limit, as loud masters are.
func saturate(r score.Rand, x []float32) {
	drive := r.Between(1, 6)
	for i, v := range x {
		x[i] = float32(math.Tanh(drive * float64(v)))
	}
}

// coarse keeps every second to fourth sample, to eight bits.
func coarse(r score.Rand, x []float32) {
	every := 2 + r.IntN(3)
	for i := range x {
		x[i] = float32(math.Round(float64(x[i-i%every])*127) / 127)
	}
}
