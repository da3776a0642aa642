package beat

import (
	"onphrase/beat/pulse"
	"onphrase/beat/spectral"
)

const (
	slowest, fastest = 55, 215 // counts [1/min]
	fewest           = 8       // counts without which there is no result
)

// Analyze finds the counts, count 1 and the phrases of a piece of music. An
// error means that src failed; music without a steady beat is a result, told
// by Track.Problem.
func Analyze(src Source) (Track, error) {
	h, err := listen(src)
	if err != nil {
		return Track{}, err
	}
	track := Track{Duration: h.duration, Meter: 4}
	activation := spectral.Activation(h.onsets)
	model := pulse.Default(h.onsets.FPS)
	found := model.Decode(activation, nil, model.SpanOf(slowest, fastest))
	if len(found.Frames) < fewest {
		track.Problem = noBeat
		return track, nil
	}
	for i, f := range found.Frames {
		track.Beats = append(track.Beats, float64(f)/h.onsets.FPS)
		track.BeatInBar = append(track.BeatInBar, i%track.Meter+1)
	}
	track.BPM = 60 * float64(len(track.Beats)-1) / (track.Beats[len(track.Beats)-1] - track.Beats[0])
	for i := 0; i < len(track.Beats); i += PhraseLen {
		n := min(PhraseLen, len(track.Beats)-i)
		track.Phrases = append(track.Phrases, Phrase{Time: track.Beats[i], Beat: i, Counts: n, Kind: KindOf(n), Energy: Medium})
	}
	return track, nil
}

const noBeat = "no steady beat found"
