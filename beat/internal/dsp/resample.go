package dsp

import (
	"math"
	"slices"
)

const (
	resampleZeros = 12  // zero crossings of the sinc on either side
	resampleBeta  = 7.0 // Kaiser parameter: about 70 dB of attenuation
)

// Resampler converts interleaved sound to another sample rate, as it streams,
// with a polyphase Kaiser-windowed sinc. The filter is centred: times do not
// move.
type Resampler struct {
	channels int
	whole    *Decimator  // does it where the ratio is a whole number
	up, down int         // the ratio of the rates in lowest terms
	phases   [][]float64 // one filter for each of the up positions between samples
	half     int         // samples of context on either side
	buf      []float64   // interleaved input not yet used up
	start    int         // index in the input of buf's first sample
	at       int         // input sample at or before the next output sample
	phase    int         // how far behind it that one is [1/up]
	made     int         // output samples so far
	read     int         // input samples seen so far
}

// NewResampler converts from rate [Hz] to target [Hz].
func NewResampler(rate, target, channels int) *Resampler {
	g := gcd(rate, target)
	r := &Resampler{channels: channels, up: target / g, down: rate / g}
	if r.up == 1 {
		r.whole = NewDecimator(r.down, resampleZeros, channels)
		return r
	}
	cutoff := min(1, float64(target)/float64(rate)) // of the input's Nyquist frequency
	r.half = int(math.Ceil(resampleZeros / cutoff))
	r.phases = make([][]float64, r.up)
	for p := range r.phases {
		r.phases[p] = sincFilter(float64(p)/float64(r.up), cutoff, r.half)
	}
	r.buf = make([]float64, r.half*channels)
	r.start = -r.half
	return r
}

// sincFilter weighs the 2*half samples around a point that lies frac behind
// the half-th of them. The weights sum to 1, so that no phase is louder.
func sincFilter(frac, cutoff float64, half int) []float64 {
	f := make([]float64, 2*half)
	sum := 0.0
	for i := range f {
		x := float64(i-half+1) - frac
		f[i] = cutoff * sinc(cutoff*x) * kaiser(x/float64(half), resampleBeta)
		sum += f[i]
	}
	for i := range f {
		f[i] /= sum
	}
	return f
}

// Write takes interleaved samples and appends what can be computed from them
// to dst.
func (r *Resampler) Write(dst []float64, samples []float32) []float64 {
	if r.whole != nil {
		return decimate(r.whole, dst, samples)
	}
	n := len(r.buf)
	r.buf = slices.Grow(r.buf, len(samples))[:n+len(samples)]
	for i, v := range samples {
		r.buf[n+i] = float64(v)
	}
	r.read += len(samples) / r.channels
	return r.drain(dst)
}

// Flush appends the samples that were waiting for what comes after the end.
func (r *Resampler) Flush(dst []float64) []float64 {
	if r.whole != nil {
		return r.whole.Flush(dst)
	}
	r.buf = append(r.buf, make([]float64, (r.half+1)*r.channels)...)
	want := (r.read*r.up + r.down - 1) / r.down
	dst = r.drain(dst)
	if extra := r.made - want; extra > 0 {
		dst = dst[:len(dst)-extra*r.channels]
	}
	return dst
}

func (r *Resampler) drain(dst []float64) []float64 {
	end := r.start + len(r.buf)/r.channels
	for r.at+r.half < end {
		x := r.buf[(r.at-r.half+1-r.start)*r.channels:]
		if filter := r.phases[r.phase]; r.channels == 1 {
			dst = append(dst, dot(filter, x))
		} else {
			dst = dot2(dst, filter, x)
		}
		r.made++
		r.at += (r.phase + r.down) / r.up
		r.phase = (r.phase + r.down) % r.up
	}
	keep := max(0, r.at-r.half+1-r.start) * r.channels
	keep = min(keep, len(r.buf))
	r.start += keep / r.channels
	r.buf = append(r.buf[:0], r.buf[keep:]...)
	return dst
}

func dot(f, x []float64) float64 {
	x = x[:len(f)]
	sum := 0.0
	for i, w := range f {
		sum += w * x[i]
	}
	return sum
}

// dot2 filters two interleaved channels at once.
func dot2(dst, f, x []float64) []float64 {
	x = x[:2*len(f)]
	a, b := 0.0, 0.0
	for i, w := range f {
		a += w * x[2*i]
		b += w * x[2*i+1]
	}
	return append(dst, a, b)
}

func sinc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
