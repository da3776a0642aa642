package align

import (
	"bufio"
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"strconv"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/outline"
	"onphrase/plan/say"
	"onphrase/samples"
)

// demoSongs are the songs of the demo by their exact truth: as tracks, and as
// what an outline is told of them.
func demoSongs(t *testing.T) (map[string]beat.Track, []outline.Song) {
	t.Helper()
	return truthSongs(t, samples.Truth())
}

// truthSongs are the songs of a folder of truth files.
func truthSongs(t *testing.T, folder fs.FS) (map[string]beat.Track, []outline.Song) {
	t.Helper()
	files, err := fs.Glob(folder, "*.phrases")
	if err != nil || len(files) == 0 {
		t.Fatalf("no songs: %v", err)
	}
	tracks := map[string]beat.Track{}
	var all []outline.Song
	for _, f := range files {
		name := strings.TrimSuffix(f, path.Ext(f))
		beats := columns(t, folder, name+".beats")
		track := beat.Track{File: name + ".mp3", Meter: 4, Trust: beat.Trust{Beat: 1, Count1: 1, Phrase: 1}}
		for _, b := range beats {
			track.Beats = append(track.Beats, b[0])
			track.BeatInBar = append(track.BeatInBar, int(b[1]))
		}
		n := len(beats)
		track.BPM = float64(int(600*float64(n-1)/(beats[n-1][0]-beats[0][0])+0.5)) / 10
		track.Duration = beats[n-1][0] + 60/track.BPM
		song := outline.Song{File: track.File, BPM: track.BPM, Suits: Suits(track.BPM, plan.Builtin())}
		at := 0
		for _, p := range columns(t, folder, f) {
			counts := int(p[1])
			track.Phrases = append(track.Phrases, beat.Phrase{Time: p[0], Beat: at, Counts: counts, Kind: beat.KindOf(counts),
				Trust: 1})
			at += counts
			song.Phrases = append(song.Phrases, counts)
		}
		tracks[track.File] = track
		all = append(all, song)
	}
	return tracks, all
}

// columns reads the figures of a truth file.
func columns(t *testing.T, folder fs.FS, file string) [][]float64 {
	t.Helper()
	src, err := fs.ReadFile(folder, file)
	if err != nil {
		t.Fatal(err)
	}
	var all [][]float64
	for s := bufio.NewScanner(bytes.NewReader(src)); s.Scan(); {
		var row []float64
		for _, f := range strings.Split(s.Text(), "\t")[:2] {
			v, err := strconv.ParseFloat(f, 64)
			if err != nil {
				t.Fatal(err)
			}
			row = append(row, v)
		}
		all = append(all, row)
	}
	return all
}

// A class to begin with, on the demo's songs, has nothing to fix, and leaves
// no counts of a phrase empty.
func TestOutlinesLand(t *testing.T) {
	tracks, songs := demoSongs(t)
	for _, minutes := range []int{30, 45, 60} {
		t.Run(fmt.Sprint(minutes), func(t *testing.T) {
			text, err := outline.Write(outline.Options{Minutes: minutes}, songs)
			if err != nil {
				t.Fatal(err)
			}
			c, problems := plan.Parse("class.yaml", []byte(text))
			for _, p := range problems {
				t.Errorf("%s", p.In("class.yaml"))
			}
			m := Build(c, tracks)
			for _, f := range m.Findings {
				if f.Severity == Fix || f.Code == "spare-counts" {
					t.Errorf("%s %s (line %d): %s; try: %s", f.Severity, f.Code, f.Line, f.Message, f.Fix)
				} else {
					t.Logf("%s %s: %s; try: %s", f.Severity, f.Code, f.Message, f.Fix)
				}
			}
			last := m.Rows[len(m.Rows)-1]
			ends := last.ClassTime + last.Seconds
			if ends > 60*float64(minutes) || ends < 0.9*60*float64(minutes) {
				t.Errorf("ends at %s", say.Clock(ends))
			}
			t.Logf("ends at %s", say.Clock(ends))
			if t.Failed() {
				t.Log(text)
			}
		})
	}
}
