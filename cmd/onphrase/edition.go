package main

import (
	"context"
	"encoding/json"
	"fmt"

	"onphrase/beat"
	"onphrase/cmd/internal/library"
)

// analysisIn finds what was heard in the songs of a package, by their names.
func analysisIn(files []unpacked) (map[string]beat.Track, error) {
	tracks := map[string]beat.Track{}
	for _, f := range files {
		if f.name != packedAnalysis {
			continue
		}
		var a struct {
			Schema string       `json:"schema"`
			Tracks []beat.Track `json:"tracks"`
		}
		if err := json.Unmarshal(f.content, &a); err != nil {
			return nil, fmt.Errorf("%s cannot be read: %w", f.name, err)
		}
		if a.Schema != library.AnalysisSchema {
			return nil, fmt.Errorf("%s is %q, this program reads %s", f.name, a.Schema, library.AnalysisSchema)
		}
		for _, t := range a.Tracks {
			if len(t.Beats) > library.MostCounts || len(t.Phrases) > library.MostCounts/beat.PhraseLen {
				return nil, fmt.Errorf("%s: more counts than any song has", f.name)
			}
			tracks[t.File] = t
		}
	}
	return tracks, nil
}

// hearing listens to files, in their order.
type hearing func(context.Context, []library.Input) ([]library.Result, error)

// listenTo compares the files that have only the name of a song with what was
// heard in the song itself.
func listenTo(ctx context.Context, songs []whereabouts, was map[string]beat.Track, hear hearing) error {
	var list []library.Input
	var which []int
	for i, w := range songs {
		if w.at != "" && !w.same {
			list, which = append(list, library.Input{Path: w.at}), append(which, i)
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
