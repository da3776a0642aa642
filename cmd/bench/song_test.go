package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"onphrase/beat"
)

// folder makes a folder of files with these contents.
func folder(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func TestSongsAreFound(t *testing.T) {
	dir := folder(t, map[string]string{
		"a.mp3": "", "a.beats": "0.5\t1\n\n1.0\t2\n1.5\t3\n2.0\t4\n", "a.phrases": "0.5\t4\tpickup\n2.5\t32\n",
		"a.sections": "2\tChorus\n",
		"b.opus":     "", "b.beats": "0\t1\n0.4\t2\n0.8\t3\n",
		"c.beats": "0\t1\n", // no sound: no song
		"manifest.tsv": "id\tsource\tstyle\tbpm\tbpm_kind\tdoubt\tmaker\tvocals\n" +
			"a\tmma:x\twaltz\t120\tconstant\toctave\twe\tsung\n",
	})
	songs, err := findSongs(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(songs) != 2 {
		t.Fatalf("%d songs, not 2", len(songs))
	}
	a, b := songs[0], songs[1]
	if a.id != "a" || a.source != "mma" || a.style != "waltz" || a.bpm != 120 || !a.constant || a.doubt != "octave" ||
		a.maker != "we" || a.vocals != "sung" {
		t.Errorf("song a: %+v", a)
	}
	if !slices.Equal(a.beats, []float64{0.5, 1, 1.5, 2}) || !slices.Equal(a.position, []int{1, 2, 3, 4}) {
		t.Errorf("its beats: %v %v", a.beats, a.position)
	}
	if len(a.phrases) != 1 || a.phrases[0].Time != 2.5 || a.phrases[0].Counts != 32 {
		t.Errorf("its phrases without the pick-up: %v", a.phrases)
	}
	if len(a.marks) != 1 || a.marks[0] != (mark{2, chorus}) {
		t.Errorf("its marks: %v", a.marks)
	}
	if b.bpm != 150 || b.constant || b.maker != "" {
		t.Errorf("a song that no manifest knows: %+v", b)
	}
}

func TestBadTruth(t *testing.T) {
	for _, c := range []struct{ file, text, where string }{
		{"a.beats", "0.5\t1\nx\t2\n", "a.beats:2"},
		{"a.beats", "0.5\t1\n1\ttwo\n", "a.beats:2"},
		{"a.phrases", "0.5\t32\nx\t2\n", "a.phrases:2"},
		{"a.sections", "chorus\n", "a.sections:1"},
	} {
		files := map[string]string{"a.mp3": "", "a.beats": "0.5\t1\n"}
		files[c.file] = c.text
		if _, err := findSongs(folder(t, files)); err == nil || !strings.Contains(err.Error(), c.where) {
			t.Errorf("%s %q: %v", c.file, c.text, err)
		}
	}
	if _, err := findSongs(t.TempDir()); err == nil {
		t.Error("an empty folder is a set of songs")
	}
}

func TestOfTempi(t *testing.T) {
	songs := []song{{bpm: 84.9}, {bpm: 85}, {bpm: 180}, {bpm: 181}}
	got, err := ofTempi(slices.Clone(songs), "85-180")
	if err != nil || len(got) != 2 || got[0].bpm != 85 || got[1].bpm != 180 {
		t.Errorf("%v, %v", got, err)
	}
	if all, err := ofTempi(slices.Clone(songs), ""); err != nil || len(all) != 4 {
		t.Errorf("%v, %v", all, err)
	}
	for _, bad := range []string{"85", "180-85", "a-b", "85-b", "a-180", "300-400"} {
		if _, err := ofTempi(slices.Clone(songs), bad); err == nil {
			t.Errorf("-bpm %s is taken", bad)
		}
	}
}

func TestLooksAreCounted(t *testing.T) {
	dir := folder(t, nil)
	if said, err := look(dir, 3, "", ""); err != nil || !strings.Contains(said, "not counted") {
		t.Errorf("%q, %v", said, err)
	}
	if _, err := os.Stat(filepath.Join(dir, lookedFile)); err == nil {
		t.Error("a file is written where none was asked for")
	}
	dir = folder(t, map[string]string{lookedFile: ""})
	for _, want := range []string{"looked at: 1 times", "looked at: 2 times"} {
		if said, err := look(dir, 3, "ear", "85-180"); err != nil || !strings.Contains(said, want) {
			t.Errorf("%q, %v, not %q", said, err, want)
		}
	}
	data, err := os.ReadFile(filepath.Join(dir, lookedFile))
	if err != nil {
		t.Fatal(err)
	}
	today := time.Now().UTC().Format(time.DateOnly)
	n := strings.Count(string(data), "\t3 songs\tbpm 85-180\twithout ear\n")
	if n != 2 || !strings.HasPrefix(string(data), today) {
		t.Errorf("the file is %q", data)
	}
}

func TestStagesAreParsed(t *testing.T) {
	if got, err := parseStages("ear,grid"); err != nil || len(got) != 2 || got[0] != "ear" || got[1] != "grid" {
		t.Errorf("%v, %v", got, err)
	}
	if got, err := parseStages(""); err != nil || got != nil {
		t.Errorf("%v, %v", got, err)
	}
	if _, err := parseStages("nose"); err == nil || !strings.Contains(err.Error(), stageNames()) {
		t.Errorf("the error does not list the stages: %v", err)
	}
}

func mustParse(t *testing.T, list string) []beat.Stage {
	t.Helper()
	stages, err := parseStages(list)
	if err != nil {
		t.Fatal(err)
	}
	return stages
}
