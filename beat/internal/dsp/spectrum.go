package dsp

// Spectrum computes power spectra of windowed frames of one length, two real
// frames in one complex transform. The transform is our own: a minute of music
// has 7000 of them, and go-dsp takes four times as long and new memory for each.
type Spectrum struct {
	window  []float64
	packed  []complex128
	fourier *radix4
}

// NewSpectrum prepares for frames of size samples, a power of two, under a
// Hann window.
func NewSpectrum(size int) *Spectrum {
	if size < 2 || size&(size-1) != 0 {
		panic("dsp: the size of a spectrum must be a power of two")
	}
	return &Spectrum{window: Hann(size), packed: make([]complex128, size), fourier: newRadix4(size)}
}

// Size is the number of samples of a frame.
func (s *Spectrum) Size() int { return len(s.window) }

// Sum writes the mean power of the channels of a frame, 1 or 2, interleaved,
// to dst[0..size/2]. Powers are added, not samples: a channel of opposite
// polarity cancels nothing.
//
// With Z the transform of a + ib, |A|² + |B|² = (|Z(k)|² + |Z(-k)|²)/2.
func (s *Spectrum) Sum(dst, frame []float64, channels int) {
	order, z := s.fourier.order, s.packed
	other := channels - 1 // the second value of a sample, or the only one again
	for i, w := range s.window {
		at := i * channels
		z[order[i]] = complex(w*frame[at], w*frame[at+other])
	}
	s.fourier.run(z)
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
	order, z := s.fourier.order, s.packed
	for i, w := range s.window {
		z[order[i]] = complex(w*a[i], w*b[i])
	}
	s.fourier.run(z)
	n := len(z)
	for k := 0; k <= n/2; k++ {
		u, v := z[k], z[(n-k)&(n-1)]
		v = complex(real(v), -imag(v))
		dstA[k] = power(u+v) / 4
		dstB[k] = power(u-v) / 4
	}
}

func power(z complex128) float64 { return real(z)*real(z) + imag(z)*imag(z) }
