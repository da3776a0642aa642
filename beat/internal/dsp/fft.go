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

// Spectrum computes power spectra of windowed frames of one length, two real
// frames in one complex transform.
type Spectrum struct {
	window []float64
	packed []complex128
}

// NewSpectrum prepares for frames of size samples, a power of two, under a
// Hann window.
func NewSpectrum(size int) *Spectrum {
	if size < 2 || size&(size-1) != 0 {
		panic("dsp: the size of a spectrum must be a power of two")
	}
	fft.EnsureRadix2Factors(size)
	return &Spectrum{window: Hann(size), packed: make([]complex128, size)}
}

// Size is the number of samples of a frame.
func (s *Spectrum) Size() int { return len(s.window) }

// Sum writes the mean power of the frames a and b to dst[0..size/2]. Powers
// are added, not samples: a channel of opposite polarity cancels nothing.
//
// With Z the transform of a + ib, |A|² + |B|² = (|Z(k)|² + |Z(-k)|²)/2.
func (s *Spectrum) Sum(dst []float64, a, b []float64) {
	z := s.transform(a, b)
	n := len(z)
	for k := 0; k <= n/2; k++ {
		dst[k] = (power(z[k]) + power(z[(n-k)&(n-1)])) / 4
	}
}

// Pair writes the power of frame a to dstA and that of b to dstB, both
// [0..size/2].
//
// A = (Z(k) + Z*(-k))/2 and B = (Z(k) - Z*(-k))/2i.
func (s *Spectrum) Pair(dstA, dstB []float64, a, b []float64) {
	z := s.transform(a, b)
	n := len(z)
	for k := 0; k <= n/2; k++ {
		u, v := z[k], z[(n-k)&(n-1)]
		v = complex(real(v), -imag(v))
		dstA[k] = power(u+v) / 4
		dstB[k] = power(u-v) / 4
	}
}

func (s *Spectrum) transform(a, b []float64) []complex128 {
	for i, w := range s.window {
		s.packed[i] = complex(w*a[i], w*b[i])
	}
	return fft.FFT(s.packed)
}

func power(z complex128) float64 { return real(z)*real(z) + imag(z)*imag(z) }

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
	for i, v := range z {
		z[i] = complex(math.Pow(power(v), exponent/2), 0)
	}
	z = fft.FFT(z) // even input: forward and inverse differ by 1/n only
	r := make([]float64, maxLag)
	for i := range r {
		r[i] = real(z[i]) / float64(n)
	}
	return r
}
