package dsp

import (
	"math"

	"github.com/mjibson/go-dsp/fft"
)

func init() {
	// The transforms are too short for the library's own goroutines to pay;
	// tracks are analysed side by side instead. The setting is global.
	fft.SetWorkerPoolSize(1)
}

// Autocorrelation returns the autocorrelation of x at lags 0..maxLag-1, with
// the magnitude spectrum raised to exponent: 2 is the plain one; smaller
// values sharpen the peaks.
//
// Ref: Tolonen & Karjalainen 2000, "A computationally efficient multipitch
// analysis model", generalised autocorrelation.
func Autocorrelation(x []float64, maxLag int, exponent float64) []float64 {
	n := 1
	for n < len(x)+maxLag {
		n *= 2
	}
	z := make([]complex128, n)
	for i, v := range x {
		z[i] = complex(v, 0)
	}
	z = fft.FFT(z)
	for k := range n/2 + 1 { // of real input, the rest is the same mirrored
		p := complex(math.Exp(exponent/2*math.Log(power(z[k]))), 0)
		z[k], z[(n-k)&(n-1)] = p, p
	}
	z = fft.FFT(z) // even input: forward and inverse differ by 1/n only
	r := make([]float64, maxLag)
	for i := range r {
		r[i] = real(z[i]) / float64(n)
	}
	return r
}
