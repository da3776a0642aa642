package synth

import "math"

// wave is the shape of an oscillator.
type wave int

const (
	saw wave = iota
	pulse
	triangle
	drawbars // sines at 1, 2, 3, 4 and 6 times the pitch
	bell     // one sine bent by another
)

// oscillator makes one tone, without aliasing that could be heard.
type oscillator struct {
	shape wave
	phase float64 // 0-1
	step  float64 // per sample
	ratio float64 // of the bending sine's frequency, bell only
}

// next is the next sample; bend is the depth of a bell's bending [rad] or the
// width of a pulse (0-1).
func (o *oscillator) next(bend float64) float64 {
	o.phase += o.step
	if o.phase >= 1 {
		o.phase -= math.Floor(o.phase)
	}
	p := o.phase
	switch o.shape {
	case saw:
		return 2*p - 1 - o.edge(p)
	case pulse:
		q := p + 1 - bend
		q -= math.Floor(q)
		return (2*p - 1 - o.edge(p)) - (2*q - 1 - o.edge(q))
	case triangle:
		return 4*math.Abs(p-0.5) - 1
	case drawbars:
		w := 2 * math.Pi * p
		return 0.5*math.Sin(w) + 0.35*math.Sin(2*w) + 0.2*math.Sin(3*w) + 0.15*math.Sin(4*w) + 0.08*math.Sin(6*w)
	}
	w := 2 * math.Pi * p
	return math.Sin(w + bend*math.Sin(o.ratio*w))
}

// edge rounds the jump of a saw over two samples.
// Ref: Välimäki & Huovilainen 2007, "Antialiasing oscillators in subtractive
// synthesis", polynomial band-limited step of second order.
func (o *oscillator) edge(p float64) float64 {
	if p < o.step {
		x := p / o.step
		return x + x - x*x - 1
	}
	if p > 1-o.step {
		x := (p - 1) / o.step
		return x*x + x + x + 1
	}
	return 0
}

// noise is a stream of white noise: xorshift, Ref: Marsaglia 2003.
type noise uint64

// next is uniform in [-1, 1).
func (n *noise) next() float64 {
	x := *n
	x ^= x << 13
	x ^= x >> 7
	x ^= x << 17
	*n = x
	return float64(int64(x)) / (1 << 63)
}
