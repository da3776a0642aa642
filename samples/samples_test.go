package samples

import (
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// The figures that issue after issue leans on.
const (
	leastTracks        = 6
	mostBytes          = 10 << 20 // of all music
	shortest, longest  = 120, 240 // of a track [s]
	slowBPM, quickBPM  = 96, 138  // the slowest and the fastest track
	usualPhrase        = 32       // counts
	leastAmbient       = 4        // sound before the first count, to be an ambient intro [s]
	leastMin, mostMins = 25, 45   // the music of the class, songs played twice counted twice
)

// song is a track of the demo as its truth tells it.
type song struct {
	beats   []float64
	inBar   []int
	phrases []phrase
}

type phrase struct {
	time   float64
	counts int
	label  string
}

func (s song) bpm() float64 {
	n := len(s.beats) - 1
	return 60 * float64(n) / (s.beats[n] - s.beats[0])
}

func (s song) has(label string, counts int) bool {
	return slices.ContainsFunc(s.phrases, func(p phrase) bool { return p.label == label && p.counts == counts })
}

// lines reads the tab-separated lines of a truth file.
func lines(t *testing.T, name string) [][]string {
	t.Helper()
	b, err := fs.ReadFile(Truth(), name)
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for line := range strings.Lines(string(b)) {
		out = append(out, strings.Split(strings.TrimSuffix(line, "\n"), "\t"))
	}
	return out
}

// readSong reads the truth of music/NAME.mp3.
func readSong(t *testing.T, name string) song {
	t.Helper()
	var s song
	for _, f := range lines(t, name+".beats") {
		s.beats = append(s.beats, number[float64](t, f[0]))
		s.inBar = append(s.inBar, number[int](t, f[1]))
	}
	for _, f := range lines(t, name+".phrases") {
		s.phrases = append(s.phrases, phrase{number[float64](t, f[0]), number[int](t, f[1]), f[2]})
	}
	return s
}

func number[T int | float64](t *testing.T, text string) (v T) {
	t.Helper()
	if _, err := fmt.Sscan(text, &v); err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return v
}

// tracks are the names in the music folder, without .mp3.
func tracks(t *testing.T) []string {
	t.Helper()
	files, err := fs.Glob(Demo(), "music/*")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, f := range files {
		out = append(out, strings.TrimSuffix(path.Base(f), ".mp3"))
	}
	return out
}

// The demo as written to somebody's disk is the class and its music, no more.
func TestDemoFiles(t *testing.T) {
	size := 0
	err := fs.WalkDir(Demo(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		if name != "class.yaml" && path.Ext(name) != ".mp3" {
			t.Errorf("the demo holds %s, which is neither the class nor music", name)
		}
		b, err := fs.ReadFile(Demo(), name)
		if path.Ext(name) == ".mp3" {
			size += len(b)
			headed(t, name, b)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if size > mostBytes {
		t.Errorf("the music takes %d bytes, want at most %d", size, mostBytes)
	}
	if n := len(tracks(t)); n < leastTracks {
		t.Errorf("%d tracks, want at least %d", n, leastTracks)
	}
}

// headed checks the marks that make a file's title and timeline known: an ID3
// tag, and LAME's header, which holds the encoder's delay.
func headed(t *testing.T, name string, b []byte) {
	t.Helper()
	if !bytes.HasPrefix(b, []byte("ID3")) || !bytes.Contains(b[:1000], []byte("TIT2")) ||
		!bytes.Contains(b[:1000], []byte("TPE1")) {
		t.Errorf("%s has no ID3 title and artist", name)
	}
	head := b[:2000]
	if !bytes.Contains(head, []byte("LAME")) || !bytes.Contains(head, []byte("Xing")) &&
		!bytes.Contains(head, []byte("Info")) {
		t.Errorf("%s has no LAME header, so its encoder delay is not known", name)
	}
}

// Beats increase, and the phrases cover them once, from count 1 to count 1.
func TestTruthIsWhole(t *testing.T) {
	for _, name := range tracks(t) {
		s := readSong(t, name)
		for i := 1; i < len(s.beats); i++ {
			if s.beats[i] <= s.beats[i-1] {
				t.Fatalf("%s: beat %d is not after the one before", name, i+1)
			}
		}
		at := 0
		for i, p := range s.phrases {
			if p.time != s.beats[at] {
				t.Errorf("%s: phrase %d starts at %.3f s, its first beat is at %.3f", name, i+1, p.time, s.beats[at])
			}
			if p.label != "pick-up" && s.inBar[at] != 1 {
				t.Errorf("%s: phrase %d starts on %d of the bar", name, i+1, s.inBar[at])
			}
			at += p.counts
		}
		if at != len(s.beats) {
			t.Errorf("%s: the phrases cover %d beats of %d", name, at, len(s.beats))
		}
	}
}

// The demo shows what makes music hard to teach to.
func TestDemoHasEverything(t *testing.T) {
	var tag, bridge, ambient, pickUp, breakdown, plain bool
	slowest, fastest := 1000.0, 0.0
	for _, name := range tracks(t) {
		s := readSong(t, name)
		if end := s.beats[len(s.beats)-1]; end < shortest || end > longest {
			t.Errorf("%s lasts %.0f s, want %d to %d", name, end, shortest, longest)
		}
		slowest, fastest = min(slowest, s.bpm()), max(fastest, s.bpm())
		tag = tag || s.has("tag", 4)
		bridge = bridge || s.has("bridge", 16)
		breakdown = breakdown || s.has("breakdown", usualPhrase)
		ambient = ambient || s.beats[0] > leastAmbient
		pickUp = pickUp || s.phrases[0].label == "pick-up"
		plain = plain || !slices.ContainsFunc(s.phrases, func(p phrase) bool { return p.counts != usualPhrase })
	}
	if slowest < slowBPM-0.01 || slowest > slowBPM+0.01 || fastest < quickBPM-0.01 || fastest > quickBPM+0.01 {
		t.Errorf("the tempi run from %.2f to %.2f BPM, want %d to %d", slowest, fastest, slowBPM, quickBPM)
	}
	for what, found := range map[string]bool{
		"a 4-count tag": tag, "a bridge of 16 counts": bridge, "a breakdown": breakdown,
		"an intro without a beat": ambient, "a pick-up": pickUp, "nothing but whole phrases": plain,
	} {
		if !found {
			t.Errorf("no track has %s", what)
		}
	}
}

// The class uses every song that comes with it and no other, and fills the time.
func TestClassUsesItsMusic(t *testing.T) {
	b, err := fs.ReadFile(Demo(), "class.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var class struct {
		Parts []struct{ Tracks []string }
	}
	if err := yaml.Unmarshal(b, &class); err != nil {
		t.Fatal(err)
	}
	have, used, seconds := tracks(t), map[string]bool{}, 0.0
	for _, p := range class.Parts {
		for _, file := range p.Tracks {
			name := strings.TrimSuffix(file, ".mp3")
			if !slices.Contains(have, name) {
				t.Errorf("the class names %s, which is not in the music folder", file)
				continue
			}
			used[name] = true
			s := readSong(t, name)
			seconds += s.beats[len(s.beats)-1]
		}
	}
	if len(used) != len(have) {
		t.Errorf("the class uses %d of %d songs", len(used), len(have))
	}
	if min := seconds / 60; min < leastMin || min > mostMins {
		t.Errorf("the class has %.1f minutes of music, want %d to %d", min, leastMin, mostMins)
	}
}
