package plan_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

var shelf = []plan.Song{
	{File: "01 - Tidewater.mp3", Title: "Tidewater"},
	{File: "02 Slow Ferry.mp3", Title: "Slow Ferry (long)"},
	{File: "spring/Slow Ferry.flac"},
	{File: "17 gantry-nine.ogg"},
	{File: "e\u0301claire.mp3", Title: "Harbour lights"},
	{File: "Mooring Parade.mp3"},
	{File: "Mooring Parade (short).mp3"},
	{File: "17 steps.wav"},
}

// Every way to name a song, and the one that is meant.
func TestPickSong(t *testing.T) {
	for name, want := range map[string]string{
		"01 - Tidewater.mp3":         "01 - Tidewater.mp3",
		"01 - TIDEWATER.MP3":         "01 - Tidewater.mp3",
		"tidewater":                  "01 - Tidewater.mp3",
		"1":                          "01 - Tidewater.mp3",
		"#01":                        "01 - Tidewater.mp3",
		"Slow Ferry (long)":          "02 Slow Ferry.mp3",
		"slow-ferry long":            "02 Slow Ferry.mp3",
		"spring/Slow Ferry":          "spring/Slow Ferry.flac",
		"Slow Ferry":                 "spring/Slow Ferry.flac", // a whole name beats one with a number before it
		"Slow Ferry.flac":            "spring/Slow Ferry.flac",
		"gantry":                     "17 gantry-nine.ogg",
		"Gantry Nine":                "17 gantry-nine.ogg",
		"éclaire":                    "e\u0301claire.mp3",
		"harbour":                    "e\u0301claire.mp3",
		"Mooring Parade":             "Mooring Parade.mp3", // the whole name beats a part of another
		"parade (short)":             "Mooring Parade (short).mp3",
		"  Mooring Parade (short)  ": "Mooring Parade (short).mp3",
		"steps":                      "17 steps.wav",
	} {
		if got, p := plan.PickSong(name, shelf); p != nil || got.File != want {
			t.Errorf("%q is %q (%v), want %q", name, got.File, p, want)
		}
	}
}

// A name that means several songs, or none, is never guessed.
func TestPickSongRefuses(t *testing.T) {
	for name, want := range map[string]plan.Problem{
		"17": {Msg: `track "17" may be any of 2 songs`, Hint: "which: 17 gantry-nine.ogg or 17 steps.wav?"},
		"parade": {Msg: `track "parade" may be any of 2 songs`,
			Hint: "which: Mooring Parade.mp3 or Mooring Parade (short).mp3?"},
		"99":       {Msg: `track "99" is none of the songs`, Hint: "the folder has 8 tracks, among them 01 - Tidewater.mp3"},
		"ti":       {Msg: `track "ti" is none of the songs`, Hint: "the folder has 8 tracks, among them 01 - Tidewater.mp3"},
		"17 setps": {Msg: `track "17 setps" is none of the songs`, Hint: "17 steps.wav?"},
		"":         {Msg: `track "" is none of the songs`, Hint: "the folder has 8 tracks, among them 01 - Tidewater.mp3"},
	} {
		got, p := plan.PickSong(name, shelf)
		if p == nil || *p != want {
			t.Errorf("%q is %q: %+v, want %+v", name, got.File, p, want)
		}
	}
}

func TestPickSongsOfClass(t *testing.T) {
	c, problems := plan.Parse("c", []byte(inClass("  - part: A\n    tracks: [tidewater, 17, nowhere.mp3]\n"+
		"    do: [{pause: water, time: 30s}]\n  - part: B\n    tracks: [17 steps]\n    do: [{pause: water, time: 30s}]\n")))
	if len(problems) > 0 {
		t.Fatal(listProblems(problems))
	}
	want := []plan.Problem{
		{Pos: plan.Pos{Line: 5, Col: 25}, Msg: `track "17" may be any of 2 songs`,
			Hint: "which: 17 gantry-nine.ogg or 17 steps.wav?"},
		{Pos: plan.Pos{Line: 5, Col: 29}, Msg: `track "nowhere.mp3" is not in the folder of the class file`,
			Hint: "the folder has 8 tracks, among them 01 - Tidewater.mp3"},
	}
	if diff := cmp.Diff(want, c.PickSongs(shelf)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if got := c.Parts[0].Tracks[0].File + " " + c.Parts[1].Tracks[0].File; got != "01 - Tidewater.mp3 17 steps.wav" {
		t.Errorf("the names are now %s", got)
	}
	if p := c.PickSongs(nil); len(p) != 1 || p[0].Msg != "the folder of the class file holds no music" {
		t.Errorf("without music: %v", p)
	}
}
