package beat

import (
	"onphrase/beat/bar"
	"onphrase/beat/ear"
	"onphrase/beat/song"
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
	b, ok := h.barred(c)
	if !ok {
		return b.track
	}
	b.track.addPhrases(phrasesOf(b.sound, b.bars, b.songs), b.agreed)
	b.track.round()
	return b.track
}

// barred is a track with counts and bars, and what its phrases are found by.
type barred struct {
	track  Track
	sound  *bar.Sound
	bars   bar.Bars
	songs  []int     // the counts at which songs of a mix begin, but for the first
	agreed []float64 // how far the bars round each count agree with each other
}

// barred finds counts and bars; not ok where no beat was found.
func (h *heard) barred(c cues) (b barred, ok bool) {
	track := Track{Duration: h.duration, Loudness: h.loudness, Outline: h.outline}
	parts := h.parts(c)
	track.addBeats(parts)
	if len(track.Beats) < fewest {
		b.track = Track{Duration: h.duration, Loudness: h.loudness, Outline: h.outline, Problem: noBeat}
		return b, false
	}
	track.addLeaps()
	jumps := track.jumps()
	fresh := union(track.seams(), jumps)
	sound := bar.Measure(track.Beats, h.frames, h.onsets, h.tones)
	sound.One = c.ones(track.Beats, parts)
	bars := c.bars(track.Beats, sound, fresh)
	songs := song.Find(sound, bars.BeatInBar, fresh)
	if len(songs) > 0 {
		fresh = union(fresh, songs)
		bars = c.bars(track.Beats, sound, fresh)
	}
	track.addSongs(songs)
	track.addJumps(jumps, songs)
	agreed := track.addBars(bars, fresh)
	return barred{track, sound, bars, songs, agreed}, true
}

const (
	noBeat = "no steady beat found"
	fewest = 8 // counts without which there is no result
)
