package main

import "onphrase/samples/synth"

// The musicians and their record are invented.
const (
	artist = "The Quay Street Engine"
	album  = "Harbour Strong"
)

// track is one song of the demo and how it is encoded.
type track struct {
	file    string // without .mp3
	song    synth.Song
	quality []string // of lame
}

// A folder of music is never all of a kind: one file has a constant rate of
// 64 kbit/s at 44.1 kHz, the others a variable one at 32 kHz.
var (
	constant = []string{"-b", "64", "--resample", "44.1"}
	variable = []string{"-V", "7", "--resample", "32"}
)

// songs is a table, hence its length. As in any folder of music, most files
// have a moment of silence in front and one starts on its first sample. Counts are those of whole sections.
var songs = []track{
	{"tidewater", synth.Song{ // straight: nothing but whole phrases
		Title: "Tidewater", BPM: 126, Style: synth.FourOnFloor, Key: synth.Key{Root: 9, Minor: true}, Seed: 21, Lead: 0.21,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Build, Counts: 32},
			{Part: synth.Drop, Counts: 64}, {Part: synth.Verse, Counts: 64}, {Part: synth.Build, Counts: 32},
			{Part: synth.Drop, Counts: 64}, {Part: synth.Outro, Counts: 32},
		},
	}, constant},
	{"mooring-parade", synth.Song{ // two pick-up counts before count 1
		Title: "Mooring Parade", BPM: 132, Style: synth.BackBeat, Key: synth.Key{Root: 2}, Seed: 8, Lead: 0.35, Rate: 32000,
		PickUp: 2,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Verse, Counts: 32}, {Part: synth.Build, Counts: 32}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Bridge, Counts: 32}, {Part: synth.Drop, Counts: 32}, {Part: synth.Outro, Counts: 32},
		},
	}, variable},
	{"slow-ferry", synth.Song{ // a tag of 4 counts before the second verse
		Title: "Slow Ferry", BPM: 112, Style: synth.Funk, Key: synth.Key{Root: 4, Minor: true}, Seed: 5, Lead: 0.12,
		Rate: 32000,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Tag, Counts: 4}, {Part: synth.Verse, Counts: 64}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Outro, Counts: 32},
		},
	}, variable},
	{"gantry-nine", synth.Song{ // a breakdown of two phrases without drums
		Title: "Gantry Nine", BPM: 138, Style: synth.Trance, Key: synth.Key{Root: 5, Minor: true}, Seed: 13, Rate: 32000,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Build, Counts: 32},
			{Part: synth.Drop, Counts: 64}, {Part: synth.Breakdown, Counts: 64}, {Part: synth.Build, Counts: 32},
			{Part: synth.Drop, Counts: 64}, {Part: synth.Outro, Counts: 32},
		},
	}, variable},
	{"brinewalk", synth.Song{ // an odd bridge of 16 counts
		Title: "Brinewalk", BPM: 124, Style: synth.BackBeat, Key: synth.Key{Root: 7, Minor: true}, Seed: 34, Lead: 0.46,
		Rate: 32000,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Bridge, Counts: 16}, {Part: synth.Verse, Counts: 64}, {Part: synth.Build, Counts: 32},
			{Part: synth.Drop, Counts: 64}, {Part: synth.Outro, Counts: 32},
		},
	}, variable},
	{"lockkeepers-hurry", synth.Song{
		Title: "Lockkeeper's Hurry", BPM: 104, Style: synth.Dembow, Key: synth.Key{Root: 0, Minor: true}, Seed: 55,
		Lead: 0.08, Rate: 32000,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Bridge, Counts: 32}, {Part: synth.Drop, Counts: 64}, {Part: synth.Outro, Counts: 32},
		},
	}, variable},
	{"ropewalk-shuffle", synth.Song{
		Title: "Ropewalk Shuffle", BPM: 118, Style: synth.Shuffle, Key: synth.Key{Root: 10}, Seed: 89, Lead: 0.27,
		Rate: 32000,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Bridge, Counts: 32}, {Part: synth.Verse, Counts: 32}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Outro, Counts: 32},
		},
	}, variable},
	{"ebb-and-lantern", synth.Song{ // sound without a beat before count 1
		Title: "Ebb and Lantern", BPM: 96, Style: synth.HipHop, Key: synth.Key{Root: 3}, Seed: 144, Lead: 0.5, Rate: 32000,
		Ambient: 9.4,
		Sections: []synth.Section{
			{Part: synth.Intro, Counts: 32}, {Part: synth.Verse, Counts: 64}, {Part: synth.Drop, Counts: 64},
			{Part: synth.Bridge, Counts: 32}, {Part: synth.Drop, Counts: 32}, {Part: synth.Outro, Counts: 32},
		},
	}, variable},
}
