package edit

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

const musicHead = "onphrase: 1 # v\nclass: T\n"

// Other tracks stand in the form that the list had, and comments stay.
func TestSetTracks(t *testing.T) {
	tests := []struct{ name, was, is string }{
		{"as many, in brackets", "    tracks: [a.mp3, \"b.mp3\"] # two\n", "    tracks: [x.mp3, y.mp3] # two\n"},
		{"fewer, in brackets", "    tracks: [a.mp3, b.mp3, c.mp3] # three\n", "    tracks: [x.mp3, y.mp3] # three\n"},
		{"as many, a line each", "    tracks:\n      # first\n      - a.mp3 # one\n      - b.mp3\n",
			"    tracks:\n      # first\n      - x.mp3 # one\n      - y.mp3\n"},
		{"more, a line each", "    tracks:\n      - a.mp3\n    # sets\n",
			"    tracks:\n      - x.mp3\n      - y.mp3\n    # sets\n"},
	}
	for _, tt := range tests {
		for _, eol := range []string{"\n", "\r\n"} {
			as := func(lines string) []byte {
				all := musicHead + "parts:\n  - part: One\n" + lines + "    do:\n      - {pause: water, time: 30s}\n"
				return []byte(strings.ReplaceAll(all, "\n", eol))
			}
			c, problems := plan.Parse("class.yaml", as(tt.was))
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			got, err := Apply(as(tt.was), []Change{SetTracks{c.Parts[0].Pos, []string{"x.mp3", "y.mp3"}}})
			if err != nil {
				t.Fatalf("%s: %v", tt.name, err)
			}
			if diff := cmp.Diff(string(as(tt.is)), string(got)); diff != "" {
				t.Errorf("%s (-want +got):\n%s", tt.name, diff)
			}
		}
	}
}

// Whatever a file is called, it is read back under that name.
func TestNamesComeBack(t *testing.T) {
	for _, file := range []string{
		"a.mp3", "01 - Rain, again.mp3", "don't.mp3", `say "go".mp3`, "[live] x.mp3", "a: b #1.mp3", "true", "#1.mp3",
		"- x.mp3", "été 2.mp3", "../spring/1,2.flac", "{a}.mp3", "null", "1.0", "*x.mp3", "50% & more.mp3",
	} {
		for _, list := range []string{"[a.mp3]", "[a.mp3, b.mp3]", "\n      - a.mp3"} {
			src := []byte(musicHead + "parts:\n  - part: One\n    tracks: " + list + "\n    do: [{pause: water, time: 30s}]\n")
			c, _ := plan.Parse("class.yaml", src)
			got, err := Apply(src, []Change{SetTracks{c.Parts[0].Pos, []string{file}}, SetMusic{"new " + file}})
			if err != nil {
				t.Fatalf("%q: %v", file, err)
			}
			again, problems := plan.Parse("class.yaml", got)
			if len(problems) > 0 || len(again.Parts[0].Tracks) != 1 || again.Parts[0].Tracks[0].File != file ||
				again.Music != "new "+file {
				t.Errorf("%q in %q: %v\n%s", file, list, problems, got)
			}
		}
	}
}

// The music folder is changed, or written where there was none.
func TestSetMusic(t *testing.T) {
	rest := "parts: [{part: One, tracks: [a.mp3], do: [{pause: water, time: 30s}]}]\n"
	for was, is := range map[string]string{
		musicHead + "music: music/ # mine\n" + rest: musicHead + "music: spring/ # mine\n" + rest,
		musicHead + rest: musicHead + "music: spring/\n" + rest,
	} {
		got, err := Apply([]byte(was), []Change{SetMusic{"spring/"}})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(is, string(got)); diff != "" {
			t.Errorf("(-want +got):\n%s", diff)
		}
	}
}

func TestSetTaught(t *testing.T) {
	src := musicHead + "parts:\n  - part: One\n    tracks: [a.mp3]\n    do: [{pause: water, time: 30s}]\n"
	c, _ := plan.Parse("class.yaml", []byte(src))
	got, err := Apply([]byte(src), []Change{SetTaught{c.Parts[0].Pos, plan.Half}})
	if want := strings.Replace(src, "    do:", "    taught: half\n    do:", 1); err != nil || string(got) != want {
		t.Errorf("%v\n%s", err, got)
	}
}
