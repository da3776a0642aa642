package main

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat"
	"onphrase/plan"
)

// The library table says what the analysis says, and no more.
func TestLibraryTable(t *testing.T) {
	whole := func(n int) []beat.Phrase {
		list := make([]beat.Phrase, n)
		for i := range list {
			list[i] = beat.Phrase{Time: 1.26 + 15*float64(i), Counts: beat.PhraseLen, Kind: beat.Whole}
		}
		return list
	}
	tagged := whole(11)
	tagged[4].Counts, tagged[4].Kind = 4, beat.Tag
	tracks := []beat.Track{
		{File: "music/tidewater.mp3", BPM: 128, Duration: 192, Phrases: whole(12),
			Alternatives: []beat.Rival{{BPM: 64, Odds: 0.08}, {BPM: 256, Odds: 0.01}},
			Trust:        beat.Trust{Beat: 1, Count1: 1, Phrase: 0.999}},
		{File: "music/slow.mp3", BPM: 96.04, Duration: 3725, Phrases: tagged,
			Trust: beat.Trust{Beat: 0.98, Count1: 0.41, Phrase: 0.85}},
		{File: "music/mix.mp3", BPM: 124.6, Duration: 546, Phrases: whole(1),
			TempoChanges: []beat.TempoChange{{Time: 277, BPM: 118}, {Time: 376, BPM: 140}}},
		{File: "music/noise.wav", Problem: "no steady beat found"},
	}
	const want = `
file               BPM or trust count 1 phrases odd  length  suits
tidewater.mp3    128.0 64    99  0:01.3      12   –    3:12  warm-up, cardio,
                                                             strength, core
slow.mp3          96.0  –    41  0:01.3      11   1 1:02:05  cool-down, stretch
mix.mp3        118-140  –     0  0:01.3       1   –    9:06  warm-up, cardio,
                                                             strength, core
noise.wav      no steady beat found
`
	var b strings.Builder
	if err := libraryTable(tracks, plan.Builtin()).write(&b, defaultWidth); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.TrimPrefix(want, "\n"), b.String()); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
}
