package plan

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

const twoParts = `onphrase: 1
class: T
music: old/
parts:
  - {part: Warm-up, tracks: [a.mp3, b.mp3], do: [{pause: water, time: 30s}]}
  - {part: Round 1, tracks: [b.mp3, c.mp3], start: phrase 2, bpm: 126, do: [{pause: water, time: 30s}]}
`

func files(m PartMusic) []string {
	var all []string
	for _, t := range m.Tracks {
		all = append(all, t.File)
	}
	return all
}

// A song that comes twice is the same other song both times; what has no
// other song stays.
func TestSongForSong(t *testing.T) {
	c, problems := Parse("class.yaml", []byte(twoParts))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	tests := []struct {
		songs []string
		want  map[int][]string
		used  int
	}{
		{[]string{"x", "y", "z", "more"}, map[int][]string{0: {"x", "y"}, 1: {"y", "z"}}, 3},
		{[]string{"x"}, map[int][]string{0: {"x", "b.mp3"}}, 1},
		{nil, map[int][]string{}, 0},
	}
	for _, tt := range tests {
		all, used := SongForSong(c, tt.songs)
		got := map[int][]string{}
		for i, m := range all {
			got[i] = files(m)
		}
		if diff := cmp.Diff(tt.want, got); diff != "" || used != tt.used {
			t.Errorf("%v: %d used (-want +got):\n%s", tt.songs, used, diff)
		}
	}
}

func TestMusicList(t *testing.T) {
	c, _ := Parse("class.yaml", []byte(twoParts))
	tests := []struct {
		name, src string
		want      map[int][]string
		problems  []Problem
	}{
		{"by name", "onphrase: 1\nmusic: new/\nparts:\n  - {part: round 1, tracks: [x.mp3], start: phrase 3}\n",
			map[int][]string{1: {"x.mp3"}}, nil},
		{"another class, by order", "onphrase: 1\nclass: U\nparts:\n  - {part: One, tracks: [x.mp3], do: [{pause: water, time: 30s}]}\n  - {part: Two, tracks: [y.mp3], do: [{pause: water, time: 30s}]}\n",
			map[int][]string{0: {"x.mp3"}, 1: {"y.mp3"}}, nil},
		{"a slip", "onphrase: 1\nparts:\n  - {part: Warm-up, tracks: [x.mp3]}\n  - {part: Rond 1, tracks: [y.mp3]}\n",
			map[int][]string{0: {"x.mp3"}},
			[]Problem{{Pos{4, 5}, `the class has no part "Rond 1"`, "Round 1?"}}},
		{"twice", "onphrase: 1\nparts:\n  - {part: Warm-up, tracks: [x.mp3]}\n  - {part: Warm-up, tracks: [y.mp3]}\n",
			map[int][]string{0: {"y.mp3"}},
			[]Problem{{Pos{4, 5}, `the part "Warm-up" has its music above`, "keep one of them"}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l, problems := ParseMusic("other.yaml", []byte(tt.src), Builtin())
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			all, problems := l.For(c)
			got := map[int][]string{}
			for i, m := range all {
				got[i] = files(m)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(tt.problems, problems); diff != "" {
				t.Errorf("problems (-want +got):\n%s", diff)
			}
		})
	}
}

// What is no list of music is said with its place.
func TestMusicListProblems(t *testing.T) {
	for src, want := range map[string]Pos{
		"onphrase: 1\n": {1, 1},
		"parts: []\n":   {1, 1},
		"onphrase: 1\nparts:\n  - {part: One, track: [x.mp3]}\n":                {3, 5},
		"onphrase: 1\nparts:\n  - {part: One, tracks: [x.mp3], do: [], a: b}\n": {3, 34},
	} {
		_, problems := ParseMusic("other.yaml", []byte(src), Builtin())
		if len(problems) == 0 || problems[0].Pos != want || problems[0].Hint == "" {
			t.Errorf("%q: %+v, want one at %v with a hint", src, problems, want)
		}
	}
}
