package beat_test

import (
	"bufio"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/beat/score"
	"onphrase/samples"
)

// What the analysis must reach on every song of the demo: she teaches from it.
const (
	demoBeats   = 0.95 // F-measure within 70 ms
	demoPhrases = 0.90 // F-measure of phrase starts within half a count
	demoTempo   = 0.05 // [1/min]
)

// TestDemoMusic holds the analysis of the demo's files against the exact truth
// that lies beside them, which comes from the generator and not from us.
func TestDemoMusic(t *testing.T) {
	songs, err := fs.Glob(samples.Demo(), "music/*.mp3")
	if err != nil || len(songs) == 0 {
		t.Fatalf("no demo music: %v", err)
	}
	for _, song := range songs {
		name := strings.TrimSuffix(path.Base(song), ".mp3")
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			track := demoTrack(t, song)
			beats, phrases := demoTruth(t, name)
			if f := score.Beats(beats, track.Beats).F; f < demoBeats {
				t.Errorf("beats: F %.3f, want %.2f or more", f, demoBeats)
			}
			truth := 60 * float64(len(beats)-1) / (beats[len(beats)-1] - beats[0])
			if d := track.BPM - truth; d < -demoTempo || d > demoTempo {
				t.Errorf("%.2f BPM, want %.2f", track.BPM, truth)
			}
			var found []score.Section
			for _, p := range track.Phrases {
				found = append(found, score.Section{Time: p.Time, Counts: p.Counts})
			}
			if f := score.Phrases(phrases, found, beats).F; f < demoPhrases {
				t.Errorf("phrases: F %.3f, want %.2f or more; found %v, want %v", f, demoPhrases, found, phrases)
			}
			for _, odd := range score.OddPhrases(phrases, found, beats) {
				if !odd.Right() {
					t.Errorf("a phrase of %d counts was found as one of %d", odd.Counts, odd.Found)
				}
			}
		})
	}
}

// demoTrack analyses one of the demo's files as a user's.
func demoTrack(t *testing.T, song string) beat.Track {
	t.Helper()
	data, err := fs.ReadFile(samples.Demo(), song)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), path.Base(song))
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	stream, err := decode.Open(file, decode.Builtin)
	if err != nil {
		t.Fatal(err)
	}
	defer stream.Close()
	return analyze(t, stream)
}

// demoTruth reads the counts [s] and phrases of a song of the demo. Pick-ups
// lead in to the first phrase and are none themselves.
func demoTruth(t *testing.T, name string) ([]float64, []score.Section) {
	t.Helper()
	var beats []float64
	each(t, name+".beats", func(line string) {
		var at float64
		var bar int
		if _, err := fmt.Sscan(line, &at, &bar); err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		beats = append(beats, at)
	})
	var phrases []score.Section
	each(t, name+".phrases", func(line string) {
		var s score.Section
		var label string
		if _, err := fmt.Sscan(line, &s.Time, &s.Counts, &label); err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		if label != "pick-up" {
			phrases = append(phrases, s)
		}
	})
	return beats, phrases
}

func each(t *testing.T, name string, do func(line string)) {
	t.Helper()
	f, err := samples.Truth().Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for s := bufio.NewScanner(f); s.Scan(); {
		do(s.Text())
	}
}
