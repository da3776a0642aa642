package tone

import (
	"math"

	"onphrase/beat/internal/dsp"
)

const (
	frameRate  = 15   // frames per second: three a beat at 300 BPM
	windowTime = 0.18 // shortest window [s]: parts notes a semitone apart from about 200 Hz on
	bassLow    = 35.0 // lowest bass note looked for [Hz]
	bassHigh   = 200  // where the bass register ends and the chords begin [Hz]
	chordHigh  = 2000 // above it overtones and cymbals outweigh the notes [Hz]
	fine       = 3    // bins a semitone while the tuning is not known yet
	fineBins   = fine * Classes
	middleC    = 261.6255653 // at A = 440 Hz [Hz]
)

// Recorder turns sound into Frames while it streams past.
//
// Only spectral peaks count, each at its interpolated frequency, so that the
// noise of drums smears over the pitch classes as little as possible.
//
// Ref: Gómez 2006, "Tonal Description of Music Audio Signals" (harmonic pitch
// class profile); Harte & Sandler 2005, "Automatic chord identification using
// a quantised chromagram" (three bins a semitone, then tuned). Left out of
// both: the weighting of overtones.
type Recorder struct {
	rate, channels int
	hop            int
	spectrum       *dsp.Spectrum
	power          []float64
	buf            []float64 // interleaved samples not yet used up
	start          int       // index in buf of the next frame's first
	chroma, bass   []float32 // fineBins values a frame
	tuning         tuning
}

// NewRecorder prepares for sound of rate [Hz] in 1 or 2 interleaved channels.
func NewRecorder(rate, channels int) *Recorder {
	size := 2
	for float64(size) < windowTime*float64(rate) {
		size *= 2
	}
	return &Recorder{
		rate: rate, channels: channels,
		hop:      max(1, int(math.Round(float64(rate)/frameRate))),
		spectrum: dsp.NewSpectrum(size),
		power:    make([]float64, size/2+1),
		buf:      make([]float64, size/2*channels), // silence before the first sample centres frame 0 on it
	}
}

// Write takes the next samples, interleaved, a multiple of the channels.
func (r *Recorder) Write(samples []float64) {
	r.buf = append(r.buf, samples...)
	r.drain()
}

// Frames ends the recording and returns what was heard. The recorder cannot
// be written to afterwards.
func (r *Recorder) Frames() *Frames {
	tail := make([]float64, (r.spectrum.Size()/2)*r.channels)
	r.Write(tail)
	tuning := r.tuning.mean()
	return &Frames{
		FPS:    float64(r.rate) / float64(r.hop),
		Tuning: tuning,
		Chroma: fold(r.chroma, tuning),
		Bass:   fold(r.bass, tuning),
	}
}

func (r *Recorder) drain() {
	size := r.spectrum.Size() * r.channels
	for ; r.start+size <= len(r.buf); r.start += r.hop * r.channels {
		r.spectrum.Sum(r.power, r.buf[r.start:r.start+size], r.channels)
		r.addFrame()
	}
	if r.start > 4*size { // forget what no frame needs any more
		r.buf = append(r.buf[:0], r.buf[r.start:]...)
		r.start = 0
	}
}

// addFrame sorts the peaks of r.power into the bins of one more frame.
func (r *Recorder) addFrame() {
	at := len(r.chroma)
	r.chroma = append(r.chroma, make([]float32, fineBins)...)
	r.bass = append(r.bass, make([]float32, fineBins)...)
	binWidth := float64(r.rate) / float64(r.spectrum.Size())
	last := min(len(r.power)-2, int(chordHigh/binWidth))
	for k := max(1, int(bassLow/binWidth)); k <= last; k++ {
		p := r.power[k]
		if p <= r.power[k-1] || p < r.power[k+1] || p == 0 {
			continue
		}
		hz := (float64(k) + vertex(r.power[k-1], p, r.power[k+1])) * binWidth
		pitch := Classes * math.Log2(hz/middleC)
		bin := int(math.Round(fine*pitch)) % fineBins
		if bin < 0 {
			bin += fineBins
		}
		magnitude := float32(math.Sqrt(p))
		if hz < bassHigh {
			r.bass[at+bin] += magnitude
		} else {
			r.chroma[at+bin] += magnitude
			r.tuning.add(pitch, float64(magnitude))
		}
	}
}

// vertex is the offset of the top of the parabola through the logarithms of
// three powers around a peak, -0.5 to 0.5 [bins].
func vertex(before, peak, after float64) float64 {
	const floor = 1e-30
	a, b, c := math.Log(before+floor), math.Log(peak+floor), math.Log(after+floor)
	if d := a - 2*b + c; d < 0 {
		return 0.5 * (a - c) / d
	}
	return 0
}
