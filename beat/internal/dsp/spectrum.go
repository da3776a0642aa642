package dsp

// Spectrum computes power spectra of windowed frames of one length, two real
// frames in one complex transform. The transform is our own: a minute of music
// has 7000 of them; mjibson's go-dsp takes four times as long for
// each, and new memory.
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
	return &Spectrum{window: Hann(size), packed: make([]complex128, size), z: make([]complex128, size), fourier: newRadix4(size)}
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
		for i, w := range s.window {
			s.packed[i] = complex(w*frame[0], w*frame[1])
			frame = frame[2:]
		}
	}
	s.fourier.run(s.z, s.packed)
	for k, u := range s.z[:len(s.z)/2+1] {
		dst[k] = (power(u) + power(s.mirrored(k))) / 4
	}
}

// Pair writes the power of frame a to dstA and that of b to dstB, both
// [0..size/2].
//
// A = (Z(k) + Z*(-k))/2 and B = (Z(k) - Z*(-k))/2i.
func (s *Spectrum) Pair(dstA, dstB []float64, a, b []float64) {
	s.pack(a, b)
	s.fourier.run(s.z, s.packed)
	for k, u := range s.z[:len(s.z)/2+1] {
		v := s.mirrored(k)
		v = complex(real(v), -imag(v))
		dstA[k] = power(u+v) / 4
		dstB[k] = power(u-v) / 4
	}
}

// pack sets a + ib under the window.
func (s *Spectrum) pack(a, b []float64) {
	b = b[:len(a)]
	for i, w := range s.window {
		s.packed[i] = complex(w*a[i], w*b[i])
	}
}

// mirrored is Z(-k).
func (s *Spectrum) mirrored(k int) complex128 { return s.z[(len(s.z)-k)&(len(s.z)-1)] }

func power(z complex128) float64 { return real(z)*real(z) + imag(z)*imag(z) }
