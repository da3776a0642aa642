package synth_test

import (
	"fmt"

	"onphrase/samples/synth"
)

// A song with a tag of four counts before its second verse, and where its
// phrases fall.
func ExampleSong_Truth() {
	song := synth.Song{
		Title: "Slack Water", BPM: 120, Style: synth.BackBeat, Seed: 1,
		Sections: []synth.Section{
			{Part: synth.Verse, Counts: 32},
			{Part: synth.Tag, Counts: 4},
			{Part: synth.Verse, Counts: 32},
		},
	}
	for _, p := range song.Truth().Phrases {
		fmt.Printf("%4.1f s: %d counts, %s\n", p.Time, p.Counts, p.Label)
	}
	sound := synth.Render(song)
	fmt.Printf("%.1f s at %d Hz\n", sound.Duration(), sound.Rate)
	// Output:
	//  0.0 s: 32 counts, verse
	// 16.0 s: 4 counts, tag
	// 18.0 s: 32 counts, verse
	// 35.5 s at 44100 Hz
}
