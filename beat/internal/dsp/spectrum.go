package dsp

// Spectrum computes power spectra of windowed frames of one length, two real
// frames in one complex transform. The transform is our own: a minute of music
// has 7000 of them, and go-dsp takes four times as long and new memory for each.
type Spectrum struct {
	window    []float64
	packed, z []complex128
	fourier   *radix4
}

// NewSpectrum prepares for frames of size samples, a power of two and 4 at
// least, under a Hann window.
func NewSpectrum(size int) *Spectrum {
	if size < 4 || size&(size-1) != 0 {
		panic("dsp: the size of a spectrum must be a power of two, and 4 at least")
	}
	return &Spectrum{window: Hann(size), packed: make([]complex128, size), z: make([]complex128, size),
		fourier: newRadix4(size)}
}

// Size is the number of samples of a frame.
func (s *Spectrum) Size() int { return len(s.window) }

// Sum writes the mean power of the channels of a frame, 1 or 2, interleaved,
// to dst[0..size/2]. Powers are added, not samples: a channel of opposite
// polarity cancels nothing.
//
// With Z the transform of a + ib, |A|² + |B|² = (|Z(k)|² + |Z(-k)|²)/2.
func (s *Spectrum) Sum(dst, frame []float64, channels int) {
	if channels == 1 {
		s.pack(frame, frame)
	} else {
		s.packBoth(frame)
	}
	s.fourier.run(s.z, s.packed)
	z, dst := s.z, dst[:len(s.z)/2+1]
	dst[0] = power(z[0]) / 2
	for k, m := 1, len(z)-1; k < len(dst) && m < len(z) && m > 0; k, m = k+1, m-1 { // m is -k; its bounds spare checks
		dst[k] = (power(z[k]) + power(z[m])) / 4
	}
}

// Pair writes the power of frame a to dstA and that of b to dstB, both
// [0..size/2].
//
// A = (Z(k) + Z*(-k))/2 and B = (Z(k) - Z*(-k))/2i.
func (s *Spectrum) Pair(dstA, dstB []float64, a, b []float64) {
	s.pack(a, b)
	s.fourier.run(s.z, s.packed)
	n := len(s.z)
	for k, u := range s.z[:n/2+1] {
		v := s.z[(n-k)&(n-1)]
		v = complex(real(v), -imag(v))
		dstA[k] = power(u+v) / 4
		dstB[k] = power(u-v) / 4
	}
}

// pack sets a + ib under the window.
func (s *Spectrum) pack(a, b []float64) {
	packed, a, b := s.packed[:len(s.window)], a[:len(s.window)], b[:len(s.window)]
	for i, w := range s.window {
		packed[i] = complex(w*a[i], w*b[i])
	}
}

// packBoth sets left + i·right of interleaved channels.
func (s *Spectrum) packBoth(frame []float64) {
	packed, frame := s.packed[:len(s.window)], frame[:2*len(s.window)]
	for i, w := range s.window {
		packed[i] = complex(w*frame[2*i], w*frame[2*i+1])
	}
}

func power(z complex128) float64 { return real(z)*real(z) + imag(z)*imag(z) }
