package tap_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"onphrase/beat/tap"
)

func TestSongIsKeptAndRead(t *testing.T) {
	s := tap.Song{Title: "Evening: Tide #2", BPM: 126.4, Phrases: []int{32, 32, 16, 36}}
	src, err := s.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	again, err := tap.ParseSong(src)
	if err != nil || again.Title != s.Title || again.BPM != s.BPM || !slices.Equal(again.Phrases, s.Phrases) {
		t.Errorf("%+v, %v from\n%s", again, err, src)
	}
	track := again.Track("evening-tide" + tap.Ending)
	if n := len(track.Beats); n != 116 || len(track.BeatInBar) != n {
		t.Errorf("%d counts, want 116", n)
	}
	if math.Abs(track.Duration-116*60/126.4) > 1e-9 {
		t.Errorf("%.3f s long", track.Duration)
	}
	for i, p := range track.Phrases {
		if p.Counts != s.Phrases[i] || track.Beats[p.Beat] != p.Time || track.BeatInBar[p.Beat] != 1 {
			t.Errorf("phrase %d: %+v", i+1, p)
		}
	}
	if k := track.Phrases[2].Kind; k != "bridge" && k != "short" {
		t.Errorf("16 counts are called %s", k)
	}
}

func TestSongProblems(t *testing.T) {
	for src, want := range map[string]string{
		"": "not a song", "onphrase: 2\nsong: A\nbpm: 120\nphrases: [32]\n": "version",
		"onphrase: 1\nbpm: 120\nphrases: [32]\n":                    "no name",
		"onphrase: 1\nsong: A\nbpm: 20\nphrases: [32]\n":            "20 BPM",
		"onphrase: 1\nsong: A\nbpm: .nan\nphrases: [32]\n":          "BPM",
		"onphrase: 1\nsong: A\nbpm: 120\n":                          "no phrase",
		"onphrase: 1\nsong: A\nbpm: 120\nphrases: [0]\n":            "phrase 1 has 0 counts",
		"onphrase: 1\nsong: A\nbpm: 120\nphrases: [32]\ntempo: 3\n": "not a song",
	} {
		if _, err := tap.ParseSong([]byte(src)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", src, err, want)
		}
	}
}

// Marks that are not quite on their counts still give the phrases of the song.
func TestCountedOff(t *testing.T) {
	p := tap.Pulse{Period: 60.0 / 128}
	marks := []float64{10, 10 + 32.6*p.Period, 10 + 64*p.Period, 10 + 80.3*p.Period, 10 + 84*p.Period}
	if got, want := tap.CountedOff(p, marks), []int{32, 32, 16, 4}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
