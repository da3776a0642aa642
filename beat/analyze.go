package beat

import (
	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/spectral"
	"onphrase/beat/tempo"
)

// Analyze finds the counts, count 1 and the phrases of a piece of music. An
// error means that src failed; music without a steady beat is a result, told
// by Track.Problem.
func Analyze(src Source) (Track, error) {
	h, err := listen(src)
	if err != nil {
		return Track{}, err
	}
	track := Track{Duration: h.duration, Loudness: h.loudness}
	bands := h.onsets.Even()
	activation := spectral.Activation(bands)
	tempi := tempo.Measure(bands, h.onsets.FPS)
	var parts []part
	evidence := append(bands, h.novelty())
	for _, s := range tempi.Path().Stretches(h.duration) {
		p := follow(s, h, activation, evidence)
		p.clarity = tempi.Clarity(s)
		parts = append(parts, p)
	}
	track.addBeats(parts)
	if len(track.Beats) < fewest {
		return Track{Duration: h.duration, Loudness: h.loudness, Problem: noBeat}, nil
	}
	sound := bar.Measure(track.Beats, h.frames, h.onsets, h.tones)
	bars := bar.Find(bar.Evidence(sound))
	track.addBars(bars)
	track.addPhrases(phrase.Find(sound, bars))
	return track, nil
}

const (
	noBeat = "no steady beat found"
	fewest = 8 // counts without which there is no result
)
