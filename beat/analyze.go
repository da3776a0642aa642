package beat

import (
	"onphrase/beat/bar"
	"onphrase/beat/ear"
	"onphrase/beat/phrase"
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
	track := Track{Duration: h.duration, Loudness: h.loudness, Outline: h.outline}
	hearing := ear.Listen(h.frames)
	bands := h.onsets.Even()
	c := h.cues(hearing, bands)
	tempi := tempo.Measure(bands, h.onsets.FPS)
	var parts []part
	for _, s := range tempi.Path().Stretches(h.duration) {
		p := follow(s, h, c)
		p.clarity = tempi.Clarity(s)
		parts = append(parts, p)
	}
	track.addBeats(parts)
	if len(track.Beats) < fewest {
		return Track{Duration: h.duration, Loudness: h.loudness, Outline: h.outline, Problem: noBeat}, nil
	}
	sound := bar.Measure(track.Beats, h.frames, h.onsets, h.tones)
	if c.heard {
		sound.One = at(track.Beats, hearing.One, hearing.FPS)
	}
	bars := bar.Find(bar.Evidence(sound), track.seams()...)
	track.addBars(bars)
	track.addPhrases(phrase.Find(sound, bars))
	track.round()
	return track, nil
}

const (
	noBeat = "no steady beat found"
	fewest = 8 // counts without which there is no result
)
