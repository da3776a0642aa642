package parcel

import (
	"context"
	"encoding/json"
	"fmt"

	"onphrase/beat"
	"onphrase/cmd/internal/library"
)

// Analysis finds what was heard in the songs of a package, by their names.
func Analysis(files []Unpacked) (map[string]beat.Track, error) {
	tracks := map[string]beat.Track{}
	for _, f := range files {
		if f.Name != packedAnalysis {
			continue
		}
		var a struct {
			Schema string       `json:"schema"`
			Tracks []beat.Track `json:"tracks"`
		}
		if err := json.Unmarshal(f.Content, &a); err != nil {
			return nil, fmt.Errorf("%s cannot be read: %w", f.Name, err)
		}
		if a.Schema != library.AnalysisSchema {
			return nil, fmt.Errorf("%s is %q, this program reads %s", f.Name, a.Schema, library.AnalysisSchema)
		}
		for _, t := range a.Tracks {
			if len(t.Beats) > library.MostCounts || len(t.Phrases) > library.MostCounts/beat.PhraseLen {
				return nil, fmt.Errorf("%s: more counts than any song has", f.Name)
			}
			tracks[t.File] = t
		}
	}
	return tracks, nil
}

// Hearing listens to files, in their order.
type Hearing func(context.Context, []library.Input) ([]library.Result, error)

// Compare compares the files that have only the name of a song with what was
// heard in the song itself.
func Compare(ctx context.Context, songs []Whereabouts, was map[string]beat.Track, hear Hearing) error {
	var list []library.Input
	var which []int
	for i, w := range songs {
		if w.At != "" && !w.Same {
			list, which = append(list, library.Input{Path: w.At}), append(which, i)
		}
	}
	if len(list) == 0 {
		return nil
	}
	results, err := hear(ctx, list)
	if err != nil {
		return err
	}
	for n, r := range results {
		w := &songs[which[n]]
		if t, ok := was[w.File]; ok && t.Problem == "" && r.Track.Problem == "" {
			w.Edition = library.Compare(t, r.Track)
		}
	}
	return nil
}
