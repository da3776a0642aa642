package beat

import (
	"onphrase/beat/bar"
	"onphrase/beat/ear"
	"onphrase/beat/spectral"
	"onphrase/beat/tone"
)

// cues are what speaks for a beat, frame by frame with the onsets.
type cues struct {
	fps        float64          // of the curves
	bands      [][]float64      // onsets, evened out
	sound      []float64        // how likely a sound begins, 0-1; the ear goes on counting through silence
	novelty    []float64        // of the harmony, evened out
	tones      *tone.Frames     // chords and bass notes
	frames     *spectral.Frames // the spectrum
	activation []float64        // how likely a frame is a count, 0-1
	heard      bool             // the activation is the ear's
	hearing    ear.Activation
	chain      chain   // the counts it heard
	least      float64 // clarity without which there is no beat
	left       without
}

// cues gathers them, from all stages but those left out.
func (h *heard) cues(hearing ear.Activation, left without) cues {
	c := h.byEar(hearing, left)
	if left.has(Ear) {
		return c.bySound()
	}
	switch sure := certainty(c.chain.beats, hearing.Beat, hearing.FPS); {
	case sure < leastSure:
		c.least = unheardClarity
		return c.bySound()
	case sure >= sureAlone:
		c.least = 0
	}
	return c
}

// byEar are the cues where the ear leads.
func (h *heard) byEar(hearing ear.Activation, left without) cues {
	c := cues{fps: h.onsets.FPS, bands: h.onsets.Even(), heard: true, hearing: hearing, chain: decode(hearing), left: left,
		least: leastClarity}
	c.sound = spectral.Activation(c.bands)
	c.novelty, c.tones, c.frames = h.novelty(), h.tones, h.frames
	if len(hearing.Beat) > 0 {
		c.activation = spectral.Stretch(hearing.Beat, hearing.FPS, c.fps, len(c.sound))
	}
	return c
}

// bySound are the cues where the ear hears no music, as in the bare clicks of
// a metronome: whatever begins to sound may be a count.
func (c cues) bySound() cues {
	c.heard, c.chain, c.activation = false, chain{}, c.sound
	if c.left.has(Tempo) || c.left.has(Bars) { // nothing else would count
		half := make([]float64, len(c.sound)) // no one of the bar is likelier than another
		for i, v := range c.sound {
			half[i] = v / 2
		}
		c.chain = decode(ear.Activation{FPS: c.fps, Beat: c.sound, One: half})
	}
	return c
}

// strength is how sure the ear is of its own counts around each beat, 0-1: that
// it hears music there says nothing about the level that the beats are at.
func (c cues) strength(beats []float64) []float64 {
	out := make([]float64, len(beats))
	own := at(c.chain.beats, c.hearing.Beat, c.hearing.FPS)
	if len(own) == 0 {
		return out
	}
	for i, t := range beats {
		out[i] = own[nearest(c.chain.beats, t)]
	}
	return out
}

// ones is how likely each beat is count 1 by ear, 0-1: nothing where sound led.
func (c cues) ones(beats []float64, parts []part) []float64 {
	if !c.heard {
		return nil
	}
	ones := at(beats, c.hearing.One, c.hearing.FPS)
	for _, p := range parts {
		if p.heard || len(p.Beats) == 0 {
			continue
		}
		for i, t := range beats {
			if t >= p.Beats[0] && t <= p.Beats[len(p.Beats)-1] {
				ones[i] = 0
			}
		}
	}
	return ones
}

// bars finds the bars of a track; seams are beats at which the tempo changes.
func (c cues) bars(beats []float64, sound *bar.Sound, seams []int) bar.Bars {
	if c.left.has(Bars) {
		return c.chain.bars(beats)
	}
	return bar.Find(sound, seams...)
}
