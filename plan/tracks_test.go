package plan_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

func TestMissingTracks(t *testing.T) {
	const src = `onphrase: 1
class: Harbour
music: music
parts:
  - part: Core
    tracks: [tidewater.mp3, Slow-Ferry.mp3, "café.mp3", sub/pier.flac]
    do: [{pause: water, time: 30s}]
`
	class := parseClean(t, []byte(src))
	at := func(col int) plan.Pos { return plan.Pos{Line: 6, Col: col} }
	for _, c := range []struct {
		name string
		have []string
		want []plan.Problem
	}{
		{"all there, é in two characters", []string{"tidewater.mp3", "Slow-Ferry.mp3", "cafe\u0301.mp3", "sub/pier.flac"},
			nil},
		{"case, ending and slip", []string{"tidewatr.mp3", "slow-ferry.mp3", "café.mp3", "pier.mp3"}, []plan.Problem{
			{Pos: at(14), Msg: `track "tidewater.mp3" is not in the music folder "music"`, Hint: "tidewatr.mp3?"},
			{Pos: at(29), Msg: `track "Slow-Ferry.mp3" is not in the music folder "music"`, Hint: "slow-ferry.mp3?"},
			{Pos: at(57), Msg: `track "sub/pier.flac" is not in the music folder "music"`, Hint: "pier.mp3?"},
		}},
		{"another folder", []string{"café.mp3", "tidewater.mp3", "Slow-Ferry.mp3"}, []plan.Problem{
			{Pos: at(57), Msg: `track "sub/pier.flac" is not in the music folder "music"`,
				Hint: "the folder has 3 tracks, among them café.mp3"},
		}},
	} {
		if diff := cmp.Diff(c.want, class.MissingTracks(c.have)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

// A folder without music is said once, not track by track.
func TestEmptyFolder(t *testing.T) {
	const src = `onphrase: 1
class: Harbour
%sparts:
  - part: Core
    tracks: [tidewater.mp3, slow-ferry.mp3]
    do: [{pause: water, time: 30s}]
`
	const hint = "put the tracks into it, or let music: name their folder, from where the class file is"
	for music, want := range map[string]plan.Problem{
		"music: songs/\n": {Pos: plan.Pos{Line: 3, Col: 8}, Msg: `the music folder "songs/" holds no music`, Hint: hint},
		"":                {Pos: plan.Pos{Line: 1, Col: 1}, Msg: "the folder of the class file holds no music", Hint: hint},
	} {
		got := parseClean(t, fmt.Appendf(nil, src, music)).MissingTracks(nil)
		if diff := cmp.Diff([]plan.Problem{want}, got); diff != "" {
			t.Errorf("%q (-want +got):\n%s", music, diff)
		}
	}
}

func TestMissingFolder(t *testing.T) {
	const src = `onphrase: 1
class: Harbour
music: %s
parts:
  - part: Core
    tracks: [tidewater.mp3]
    do: [{pause: water, time: 30s}]
`
	for music, want := range map[string]string{
		"musik":      "music/?",
		"../Muzic/":  "../music/?",
		"elsewhere/": "music: names it, from where the class file is",
	} {
		got := parseClean(t, fmt.Appendf(nil, src, music)).MissingFolder([]string{"pictures", "music"})
		if diff := cmp.Diff(plan.Problem{Pos: plan.Pos{Line: 3, Col: 8},
			Msg: fmt.Sprintf("the music folder %q does not exist", music), Hint: want}, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", music, diff)
		}
	}
}
