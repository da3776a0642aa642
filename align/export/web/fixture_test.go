package web

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/samples"
)

var cautions = []string{"Anyone who feels pain stops.", "A file cannot tell how loud the room is."}

// truth is a song of the demo as its generator made it: nothing of it has
// been found by listening.
func truth(t testing.TB, name string) beat.Track {
	t.Helper()
	track := beat.Track{File: name + ".mp3", Title: name, Meter: 4, Trust: beat.Trust{Beat: 1, Count1: 1, Phrase: 1}}
	for _, f := range fieldsOf(t, name+".beats") {
		in, _ := strconv.Atoi(f[1])
		track.Beats = append(track.Beats, number(t, f[0]))
		track.BeatInBar = append(track.BeatInBar, in)
	}
	n := len(track.Beats)
	track.BPM = 60 * float64(n-1) / (track.Beats[n-1] - track.Beats[0])
	track.Duration = track.Beats[n-1] + 120/track.BPM
	for i := range int(track.Duration / beat.OutlineStep) { // loud on the first of four, less on the others
		track.Outline = append(track.Outline, []float64{0, -4, -7, -2}[i%4]-float64(i%23)/4)
	}
	energies := []beat.Energy{beat.Low, beat.Medium, beat.High}
	for i, f := range fieldsOf(t, name+".phrases") {
		counts, _ := strconv.Atoi(f[1])
		at := number(t, f[0])
		k := 0
		for k < n-1 && track.Beats[k] < at-0.001 {
			k++
		}
		track.Phrases = append(track.Phrases, beat.Phrase{
			Time: at, Beat: k, Counts: counts, Kind: beat.KindOf(counts), Trust: 1, Energy: energies[i%3],
		})
	}
	beat.Suggest(track.Phrases)
	return track
}

func fieldsOf(t testing.TB, name string) [][]string {
	t.Helper()
	src, err := fs.ReadFile(samples.Truth(), name)
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for _, l := range strings.Split(strings.TrimSpace(string(src)), "\n") {
		out = append(out, strings.Split(l, "\t"))
	}
	return out
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// mapOf lays a class on the demo's songs.
func mapOf(t testing.TB, class string) *align.CountMap {
	t.Helper()
	c, problems := plan.Parse("class.yaml", []byte(class))
	for _, p := range problems {
		t.Fatal(p.In("class.yaml"))
	}
	tracks := map[string]beat.Track{}
	for _, part := range c.Parts {
		for _, ref := range part.Tracks {
			if name, ok := strings.CutSuffix(ref.File, ".mp3"); ok {
				if _, err := fs.Stat(samples.Truth(), name+".beats"); err == nil {
					tracks[ref.File] = truth(t, name)
				}
			}
		}
	}
	m := align.Build(c, tracks)
	for i := range m.Parts {
		for j := range m.Parts[i].Tracks {
			if music := &m.Parts[i].Tracks[j]; music.Taught != nil {
				music.Path = "music/" + music.File
			}
		}
	}
	return m
}

// demoClass is the class that comes with the program.
func demoClass(t testing.TB) string {
	t.Helper()
	src, err := fs.ReadFile(samples.Demo(), "class.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// written is the page of a map.
func written(t testing.TB, m *align.CountMap) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, m, cautions); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// pageFile writes the page and the songs it names beside it.
func pageFile(t *testing.T, m *align.CountMap) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "music"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, p := range m.Parts {
		for _, music := range p.Tracks {
			if music.Taught == nil {
				continue
			}
			src, err := fs.ReadFile(samples.Demo(), "music/"+music.File)
			if err == nil {
				err = os.WriteFile(filepath.Join(dir, "music", music.File), src, 0o644)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
	}
	file := filepath.Join(dir, "class # 1.html") // a name that must be escaped in an address
	if err := os.WriteFile(file, []byte(written(t, m)), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// countIn says where a count of the truth is, as the stage says it.
func countIn(t beat.Track, at float64) string {
	n := 0
	for n < len(t.Beats) && t.Beats[n] <= at+0.0006 { // the page rounds to milliseconds
		n++
	}
	n--
	for i := len(t.Phrases) - 1; i >= 0; i-- {
		if p := t.Phrases[i]; p.Beat <= n {
			return fmt.Sprintf("phrase %d, count %d", i+1, n-p.Beat+1)
		}
	}
	return "before phrase 1"
}
