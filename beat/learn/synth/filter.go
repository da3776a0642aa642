package synth

import "math"

// resonator is a state-variable filter of second order.
//
// Ref: Zavalishin 2012, "The art of VA filter design", the trapezoidal SVF.
type resonator struct {
	g, k, a1, a2, a3 float64
	ic1, ic2         float64
	lowOut, bandOut  float64
}

func newResonator(f, q float64) *resonator {
	s := &resonator{}
	s.tune(f, q)
	return s
}

// tune moves the filter to f [Hz] with quality q.
func (s *resonator) tune(f, q float64) {
	s.g = math.Tan(math.Pi * min(f, 0.47*Rate) / Rate)
	s.k = 1 / q
	s.a1 = 1 / (1 + s.g*(s.g+s.k))
	s.a2 = s.g * s.a1
	s.a3 = s.g * s.a2
}

func (s *resonator) step(x float64) {
	v3 := x - s.ic2
	v1 := s.a1*s.ic1 + s.a2*v3
	v2 := s.ic2 + s.a2*s.ic1 + s.a3*v3
	s.ic1, s.ic2 = 2*v1-s.ic1, 2*v2-s.ic2
	s.bandOut, s.lowOut = v1, v2
}

func (s *resonator) low(x float64) float64  { s.step(x); return s.lowOut }
func (s *resonator) band(x float64) float64 { s.step(x); return s.k * s.bandOut }
func (s *resonator) high(x float64) float64 { s.step(x); return x - s.k*s.bandOut - s.lowOut }
