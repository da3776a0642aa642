package tone

import (
	"math"

	"onphrase/beat/internal/dsp"
)

const (
	thin       = 4    // part of the sample rate that is enough for the highest chord
	frameRate  = 15   // frames per second: three a beat at 300 BPM
	windowTime = 0.18 // shortest window [s]: parts notes a semitone apart from about 200 Hz on
	bassLow    = 35.0 // lowest bass note looked for [Hz]
	bassHigh   = 200  // where the bass register ends and the chords begin [Hz]
	chordHigh  = 2000 // above it overtones and cymbals outweigh the notes [Hz]
	fine       = 3    // bins a semitone while the tuning is not known yet
	fineBins   = fine * Classes
	atOnce     = 8192        // frames brought to the tuning together: nine minutes, a song in one
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
	rate         float64 // of buf [Hz]
	channels     int
	half, low    *dsp.Decimator
	spectrum     *dsp.Spectrum
	power        []float64
	halved       []float64 // scratch
	buf          []float64 // interleaved samples not yet used up
	start        int       // index of buf's first
	next         int       // index of the next frame
	chroma, bass []float32 // of the last frames, fineBins values each
	tuning       tuning
	frames       Frames // those before
}

// NewRecorder prepares for sound of rate [Hz] in 1 or 2 interleaved channels.
func NewRecorder(rate, channels int) *Recorder {
	thinned := float64(rate) / thin
	size := 4
	for float64(size) < windowTime*thinned {
		size *= 2
	}
	return &Recorder{
		rate: thinned, channels: channels,
		// In two steps, the first need not be steep: at 22050 Hz, nothing from
		// 3.5 kHz on comes to lie below chordHigh.
		half: dsp.NewDecimator(2, 4, channels), low: dsp.NewDecimator(thin/2, 8, channels),
		spectrum: dsp.NewSpectrum(size),
		power:    make([]float64, size/2+1),
		buf:      make([]float64, size/2*channels), start: -size / 2, // silence before the first sample
	}
}

// Write takes the next samples, interleaved, a multiple of the channels.
func (r *Recorder) Write(samples []float64) {
	r.halved = r.half.Write(r.halved[:0], samples)
	r.buf = r.low.Write(r.buf, r.halved)
	r.drain()
}

// Frames ends the recording and returns what was heard. The recorder cannot
// be written to afterwards.
func (r *Recorder) Frames() *Frames {
	r.halved = r.half.Flush(r.halved[:0])
	r.buf = r.low.Flush(r.low.Write(r.buf, r.halved))
	r.buf = append(r.buf, make([]float64, r.spectrum.Size()/2*r.channels)...)
	r.drain()
	r.fold()
	r.frames.FPS = frameRate
	return &r.frames
}

// fold brings the last frames to the tuning of all so far. Of a mix of hours,
// there is no room to wait for the end; its tracks have tunings of their own
// anyway.
func (r *Recorder) fold() {
	r.frames.Tuning = r.tuning.mean()
	r.frames.Chroma = append(r.frames.Chroma, fold(r.chroma, r.frames.Tuning)...)
	r.frames.Bass = append(r.frames.Bass, fold(r.bass, r.frames.Tuning)...)
	r.chroma, r.bass = r.chroma[:0], r.bass[:0]
}

func (r *Recorder) drain() {
	size := r.spectrum.Size()
	for ; r.frameStart()+size <= r.start+len(r.buf)/r.channels; r.next++ {
		at := (r.frameStart() - r.start) * r.channels
		r.spectrum.Sum(r.power, r.buf[at:at+size*r.channels], r.channels)
		r.addFrame()
	}
	used := min(r.frameStart()-r.start, len(r.buf)/r.channels)
	r.start += used
	r.buf = append(r.buf[:0], r.buf[used*r.channels:]...)
}

// frameStart is the index of the next frame's first sample.
func (r *Recorder) frameStart() int {
	return int(math.Round(float64(r.next)*r.rate/frameRate)) - r.spectrum.Size()/2
}

// addFrame sorts the peaks of r.power into the bins of one more frame.
func (r *Recorder) addFrame() {
	if len(r.chroma) == atOnce*fineBins {
		r.fold()
	}
	at := len(r.chroma)
	r.chroma = append(r.chroma, make([]float32, fineBins)...)
	r.bass = append(r.bass, make([]float32, fineBins)...)
	binWidth := r.rate / float64(r.spectrum.Size())
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
	before, peak, after = before+floor, peak+floor, after+floor
	if bend := math.Log(before * after / (peak * peak)); bend < 0 {
		return 0.5 * math.Log(before/after) / bend
	}
	return 0
}
