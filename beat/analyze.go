package beat

import (
	"onphrase/beat/bar"
	"onphrase/beat/ear"
	"onphrase/beat/phrase"
)

// Analyze finds the counts, count 1 and the phrases of a piece of music. An
// error means that src failed; music without a steady beat is a result, told
// by Track.Problem.
func Analyze(src Source) (Track, error) { return AnalyzeWithout(src) }

// AnalyzeWithout is Analyze without some of its stages, to measure what each
// of them is worth.
func AnalyzeWithout(src Source, left ...Stage) (Track, error) {
	h, err := listen(src)
	if err != nil {
		return Track{}, err
	}
	var hearing ear.Activation
	if !without(left).has(Ear) {
		hearing = ear.Listen(h.frames)
	}
	h.frames.Pack() // the others need them less exactly
	return h.track(h.cues(hearing, left)), nil
}

// track is what the cues make of the sound.
func (h *heard) track(c cues) Track {
	track, sound, bars := h.barred(c)
	if sound == nil {
		return track
	}
	track.addPhrases(phrase.Find(sound, bars))
	track.round()
	return track
}

// barred is a track with counts and bars, and what its counts sound like; nil
// where no beat was found.
func (h *heard) barred(c cues) (Track, *bar.Sound, bar.Bars) {
	track := Track{Duration: h.duration, Loudness: h.loudness, Outline: h.outline}
	parts := h.parts(c)
	track.addBeats(parts)
	if len(track.Beats) < fewest {
		return Track{Duration: h.duration, Loudness: h.loudness, Outline: h.outline, Problem: noBeat}, nil, bar.Bars{}
	}
	sound := bar.Measure(track.Beats, h.frames, h.onsets, h.tones)
	sound.One = c.ones(track.Beats, parts)
	bars := c.bars(track.Beats, sound, track.seams())
	track.addBars(bars)
	return track, sound, bars
}

const (
	noBeat = "no steady beat found"
	fewest = 8 // counts without which there is no result
)
