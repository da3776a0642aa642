package loudness

import "math"

// biquad is a filter of second order in transposed direct form II, with a0 = 1.
type biquad struct {
	b0, b1, b2, a1, a2 float64
	z1, z2             float64
}

// settle sets what is left of a sound that ended long ago to nothing, for
// numbers that small are slow to reckon with.
func (f *biquad) settle() {
	const inaudible = 1e-30
	if math.Abs(f.z1) < inaudible && math.Abs(f.z2) < inaudible {
		f.z1, f.z2 = 0, 0
	}
}

// kFilter is the K weighting of one channel: a shelf for the head, then a high
// pass.
type kFilter struct {
	shelf, highPass biquad
	squares         float64 // of what came out since it was last asked
}

func newKFilter(rate int) kFilter {
	return kFilter{shelf: newShelf(rate), highPass: newHighPass(rate)}
}

// write filters every step-th value of samples and adds up the squares of what
// comes out. It is one loop over plain numbers, which the processor keeps at
// hand, and first adds up what need not wait for the last result: all the sound
// of a track goes through it.
func (k *kFilter) write(samples []float32, step int) {
	f, g := k.shelf, k.highPass
	f1, f2, g1, g2 := f.z1, f.z2, g.z1, g.z2
	sum := k.squares
	for i := 0; i < len(samples); i += step {
		x := float64(samples[i])
		y := f.b0*x + f1
		f1 = f.b1*x + f2 - f.a1*y
		f2 = f.b2*x - f.a2*y
		z := y + g1 // of the high pass, b is 1, -2, 1
		g1 = g2 - 2*y - g.a1*z
		g2 = y - g.a2*z
		sum += z * z
	}
	k.shelf.z1, k.shelf.z2, k.highPass.z1, k.highPass.z2 = f1, f2, g1, g2
	k.squares = sum
}

func (k *kFilter) settle() {
	k.shelf.settle()
	k.highPass.settle()
}

// newShelf is the first stage, which raises what lies above 1.7 kHz by 4 dB.
//
// BS.1770-4 gives its coefficients at 48 kHz only. The analogue filter behind
// them, from which other rates follow by the bilinear transform, is after
// Ref: B. De Man, "Evaluation of Implementations of the EBU R128 Loudness
// Measurement", AES 145 (2018), table 1.
func newShelf(rate int) biquad {
	const (
		frequency = 1681.974450955533 // [Hz]
		gain      = 3.999843853973347 // [dB]
		q         = 0.7071752369554196
		bandPower = 0.4996667741545416 // of the gain, at the corner
	)
	k := math.Tan(math.Pi * frequency / float64(rate))
	high := math.Pow(10, gain/20)
	band := math.Pow(high, bandPower)
	a0 := 1 + k/q + k*k
	return biquad{
		b0: (high + band*k/q + k*k) / a0,
		b1: 2 * (k*k - high) / a0,
		b2: (high - band*k/q + k*k) / a0,
		a1: 2 * (k*k - 1) / a0,
		a2: (1 - k/q + k*k) / a0,
	}
}

// newHighPass is the second stage, which takes away what lies below 40 Hz.
// Its gain is a little above 1, as the standard has it.
func newHighPass(rate int) biquad {
	const (
		frequency = 38.13547087602444 // [Hz]
		q         = 0.5003270373238773
	)
	k := math.Tan(math.Pi * frequency / float64(rate))
	a0 := 1 + k/q + k*k
	return biquad{b0: 1, b1: -2, b2: 1, a1: 2 * (k*k - 1) / a0, a2: (1 - k/q + k*k) / a0}
}
