package synth

import "math"

// buffer is stereo sound in the making.
type buffer struct {
	rate float64 // [Hz]
	l, r []float32
}

func newBuffer(rate float64, n int) *buffer {
	return &buffer{rate: rate, l: make([]float32, n), r: make([]float32, n)}
}

// clear makes it silent again.
func (b *buffer) clear() {
	clear(b.l)
	clear(b.r)
}

// start is the sample a note begins on.
func (b *buffer) start(n note) int { return int(math.Round(n.at * b.rate)) }

// add mixes one sample in, if there is such a place.
func (b *buffer) add(i int, l, r float64) {
	if i >= 0 && i < len(b.l) {
		b.l[i] += float32(l)
		b.r[i] += float32(r)
	}
}

// place is a pair of gains that puts a sound between the loudspeakers with the
// same power everywhere.
type place struct{ l, r float64 }

// panned turns -1 (left) to 1 (right) into gains.
func panned(pan float64) place {
	a := (pan + 1) * math.Pi / 4
	return place{l: math.Cos(a), r: math.Sin(a)}
}

// fall is an exponential decay: 1 at 0, 1/1000 (-60 dB) after length seconds.
func fall(t, length float64) float64 { return math.Exp(-6.9078 * t / length) }
