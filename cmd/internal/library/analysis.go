package library

import (
	"encoding/json"
	"io"

	"onphrase/beat"
)

// AnalysisSchema names the JSON that analyze writes; analysis.schema.json
// describes it.
const AnalysisSchema = "onphrase.analysis/1"

// WriteAnalysis writes one entry a track, those without a result as well.
func WriteAnalysis(w io.Writer, tracks []beat.Track) error {
	entries := make([]beat.Track, len(tracks))
	for i, t := range tracks {
		if t.Problem != "" {
			t = noTrack(t.File, t.Problem)
		}
		entries[i] = withLists(t)
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	return enc.Encode(struct {
		Schema string       `json:"schema"`
		Tracks []beat.Track `json:"tracks"`
	}{AnalysisSchema, entries})
}

// withLists makes empty lists of those that are missing, so that JSON shows []
// and not null.
func withLists(t beat.Track) beat.Track {
	t.Alternatives = append([]beat.Rival{}, t.Alternatives...)
	t.Beats = append([]float64{}, t.Beats...)
	t.BeatInBar = append([]int{}, t.BeatInBar...)
	t.Phrases = append([]beat.Phrase{}, t.Phrases...)
	t.Unsteady = append([][2]float64{}, t.Unsteady...)
	t.TempoChanges = append([]beat.TempoChange{}, t.TempoChanges...)
	t.Songs = append([]beat.Song{}, t.Songs...)
	t.Outline = append(beat.Outline{}, t.Outline...)
	for i := range t.Outline {
		t.Outline[i] += 0 // a level of -0 dB is 0
	}
	return t
}
