package synth

import "math"

// filter is a state-variable filter of second order giving low, band and high
// pass at once. Ref: Zavalishin 2012, "The Art of VA Filter Design", ch. 4.
type filter struct {
	g, k, a   float64
	ic1, ic2  float64
	low, band float64
	high      float64
}

// tune sets the cut-off [Hz] and the resonance (0 none - 1 about to ring).
func (f *filter) tune(cutoff, resonance, rate float64) {
	cutoff = math.Max(10, math.Min(cutoff, 0.45*rate))
	f.g = math.Tan(math.Pi * cutoff / rate)
	f.k = 2 - 1.9*resonance
	f.a = 1 / (1 + f.g*(f.g+f.k))
}

// feed takes one sample; the results are in low, band and high.
func (f *filter) feed(x float64) {
	v1 := f.a * (f.ic1 + f.g*(x-f.ic2))
	v2 := f.ic2 + f.g*v1
	f.ic1 = 2*v1 - f.ic1
	f.ic2 = 2*v2 - f.ic2
	f.low, f.band, f.high = v2, f.k*v1, x-f.k*v1-v2
}
