package spectral

import (
	"math"
	"slices"

	"onphrase/beat/internal/dsp"
)

const (
	// Rate is the sample rate that a Recorder takes [Hz].
	Rate = 22050
	// OnsetRate is the frame rate of Onsets [1/s].
	OnsetRate = 100
	// levelEvery thins the levels kept in Frames: every second onset frame.
	levelEvery = 2

	frameSize = 1024 // [samples], 46 ms
)

// Recorder measures the sound of a track while it streams by.
type Recorder struct {
	channels int
	spectrum *dsp.Spectrum
	bank     *filterbank
	flux     *flux
	onsets   *Onsets
	frames   *Frames
	attack   *attackMeter

	buf           []float64 // interleaved samples not yet used up
	start         int       // index of buf's first sample
	next          int       // index of the next frame
	powerA        []float64
	powerB        []float64
	magnitude     []float64
	row           []float32
	power, power2 float64 // sums of the frames' power, and of its square
}

// NewRecorder measures sound of 1 or 2 channels at Rate.
func NewRecorder(channels int) *Recorder {
	bank := newFilterbank()
	return &Recorder{
		channels: channels, spectrum: dsp.NewSpectrum(frameSize), bank: bank, flux: newFlux(bank.centres),
		onsets: &Onsets{FPS: OnsetRate, Band: make([][]float32, len(Ranges))},
		frames: &Frames{FPS: OnsetRate / levelEvery, Bands: bank.centres},
		attack: newAttackMeter(channels),
		buf:    make([]float64, frameSize/2*channels), start: -frameSize / 2,
		powerA: make([]float64, frameSize/2+1), powerB: make([]float64, frameSize/2+1),
		magnitude: make([]float64, len(bank.centres)), row: make([]float32, len(bank.centres)),
	}
}

// Write takes interleaved samples at Rate.
func (r *Recorder) Write(samples []float64) {
	r.buf = append(r.buf, samples...)
	r.attack.write(r.buf[len(r.buf)-len(samples)-r.channels:])
	r.drain()
}

// Finish ends the recording and returns what was measured.
func (r *Recorder) Finish() (*Frames, *Onsets, *Attack) {
	r.buf = append(r.buf, make([]float64, frameSize*r.channels)...) // the last frames reach past the end
	r.drain()
	if r.power > 0 {
		// The level of the track, weighted by its own power so that silence
		// around the music does not lower it.
		level := math.Sqrt(r.power2 / r.power)
		for _, sheet := range r.frames.sheet {
			for i, m := range sheet {
				sheet[i] = float32(math.Log(1 + levelCompression*float64(m)/level))
			}
		}
	}
	for j, band := range r.onsets.Band {
		r.onsets.Band[j] = slices.Clone(band) // without the room to grow, which of hours is much
	}
	attack := r.attack.attack
	attack.Energy = slices.Clone(attack.Energy)
	return r.frames, r.onsets, attack
}

// frameStart is the index of the first sample of frame i.
func frameStart(i int) int {
	return int(math.Round(float64(i)*Rate/OnsetRate)) - frameSize/2
}

// drain makes all the frames that buf has the samples for. Two channels share
// one transform; of one channel, two frames do.
func (r *Recorder) drain() {
	for {
		end := r.start + len(r.buf)/r.channels
		if r.channels == 2 {
			if frameStart(r.next)+frameSize > end {
				break
			}
			x := r.buf[(frameStart(r.next)-r.start)*2:]
			r.spectrum.Sum(r.powerA, x[:2*frameSize], 2)
			r.add(r.powerA)
			continue
		}
		if frameStart(r.next+1)+frameSize > end {
			break
		}
		x := r.buf[frameStart(r.next)-r.start:]
		y := r.buf[frameStart(r.next+1)-r.start:]
		r.spectrum.Pair(r.powerA, r.powerB, x[:frameSize], y[:frameSize])
		r.add(r.powerA)
		r.add(r.powerB)
	}
	if used := (frameStart(r.next) - r.start) * r.channels; used > 0 {
		used = min(used, len(r.buf))
		r.start += used / r.channels
		r.buf = append(r.buf[:0], r.buf[used:]...)
	}
}

// add takes the power spectrum of the next frame.
func (r *Recorder) add(power []float64) {
	r.bank.apply(r.magnitude, power)
	r.flux.add(r.onsets, r.magnitude)
	if r.next%levelEvery == 0 {
		sum := 0.0
		for i, m := range r.magnitude {
			sum += m * m
			r.row[i] = float32(m)
		}
		r.frames.add(r.row)
		r.power += sum
		r.power2 += sum * sum
	}
	r.next++
}
