package dsp

import (
	"math"
	"sync"
)

// Autocorrelation returns the autocorrelation of x at lags 0..maxLag-1, with
// the magnitude spectrum raised to exponent: 2 is the plain one; smaller
// values sharpen the peaks.
//
// Ref: Tolonen & Karjalainen 2000, "A computationally efficient multipitch
// analysis model", generalised autocorrelation.
func Autocorrelation(x []float64, maxLag int, exponent float64) []float64 {
	n := 4
	for n < len(x)+maxLag {
		n *= 2
	}
	fourier := transformOf(n)
	in, z := make([]complex128, n), make([]complex128, n)
	for i, v := range x {
		in[i] = complex(v, 0)
	}
	fourier.run(z, in)
	for k := range n/2 + 1 { // of real input, the rest is the same mirrored
		p := complex(math.Exp(exponent/2*math.Log(power(z[k]))), 0)
		in[k], in[(n-k)&(n-1)] = p, p
	}
	fourier.run(z, in) // even input: forward and inverse differ by 1/n only
	r := make([]float64, maxLag)
	for i := range r {
		r[i] = real(z[i]) / float64(n)
	}
	return r
}

// transforms are those that autocorrelations took so far, by size.
var transforms sync.Map

func transformOf(size int) *radix4 {
	f, ok := transforms.Load(size)
	if !ok {
		f, _ = transforms.LoadOrStore(size, newRadix4(size))
	}
	return f.(*radix4)
}
