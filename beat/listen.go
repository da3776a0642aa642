package beat

import (
	"errors"
	"fmt"
	"io"

	"onphrase/beat/internal/dsp"
	"onphrase/beat/loudness"
	"onphrase/beat/spectral"
	"onphrase/beat/tone"
)

// heard is all that is kept of the sound of a track.
type heard struct {
	frames   *spectral.Frames
	onsets   *spectral.Onsets
	attack   *spectral.Attack
	tones    *tone.Frames
	duration float64 // [s]
	loudness float64 // integrated [LUFS]
	outline  Outline
}

// novelty is the change of harmony, frame for frame with the onsets.
func (h *heard) novelty() []float64 {
	x := spectral.Stretch(h.frames.Novelty(), h.frames.FPS, h.onsets.FPS, h.onsets.Len())
	return spectral.EvenOut(x, h.onsets.FPS)
}

// bothSpeakers is how much louder a file of one channel plays, since it comes
// out of both loudspeakers, than BS.1770 measures its channel alone [LU].
const bothSpeakers = 3.01

// block is how many samples are read at a time, per channel.
const block = 8192

// listen reads src once, from start to end, and feeds everything that needs
// the sound.
func listen(src Source) (*heard, error) {
	rate, channels := src.Rate(), src.Channels()
	if rate <= 0 || channels < 1 || channels > 2 {
		return nil, fmt.Errorf("beat: cannot analyse %d channels at %d Hz", channels, rate)
	}
	resampler := dsp.NewResampler(rate, spectral.Rate, channels)
	onset := spectral.NewRecorder(channels)
	meter := loudness.NewMeter(rate, channels)
	harmony := tone.NewRecorder(spectral.Rate, channels)
	in := make([]float32, block*channels)
	var out []float64
	samples := 0
	for {
		n, err := src.Read(in)
		samples += n / channels
		meter.Write(in[:n])
		out = resampler.Write(out[:0], in[:n])
		if err != nil {
			out = resampler.Flush(out)
		}
		onset.Write(out)
		harmony.Write(out)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("beat: reading the sound: %w", err)
		}
	}
	h := &heard{tones: harmony.Frames(), duration: float64(samples) / float64(rate)}
	if l, ok := meter.Integrated(); ok {
		h.loudness = l
		if channels == 1 {
			h.loudness += bothSpeakers
		}
	}
	h.outline = outlineOf(meter.Powers(OutlineStep))
	h.frames, h.onsets, h.attack = onset.Finish()
	return h, nil
}
