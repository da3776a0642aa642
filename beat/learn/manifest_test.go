package learn_test

import (
	_ "embed"
	"encoding/csv"
	"os"
	"regexp"
	"strings"
	"testing"

	"onphrase/beat/learn"
)

//go:embed songs.tsv
var songs string

func items(t *testing.T) []learn.Item {
	t.Helper()
	all, err := learn.ParseItems(songs)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 1000 {
		t.Fatalf("only %d songs", len(all))
	}
	return all
}

func TestTrainingAndHeldOutShareNothing(t *testing.T) {
	train, fonts, seeds := map[string]bool{}, map[string]bool{}, map[uint64]string{}
	for _, it := range items(t) {
		if it.Set == "train" && it.Kind == "midi" {
			train[strings.TrimRight(it.Source, "-12")] = true
		}
		if it.Set == "train" && it.Font != "-" {
			fonts[it.Font] = true
		}
	}
	for _, it := range items(t) {
		if other, ok := seeds[it.Seed]; ok {
			t.Errorf("%s and %s share the seed %d", it.ID, other, it.Seed)
		}
		seeds[it.Seed] = it.ID
		if it.Set == "train" {
			continue
		}
		if it.Kind == "midi" && train[strings.TrimRight(it.Source, "-12")] {
			t.Errorf("%s (%s) is in set %s and trained on", it.ID, it.Source, it.Set)
		}
		if it.Font != "-" && fonts[it.Font] {
			t.Errorf("%s: %s is in set %s and trained on", it.ID, it.Font, it.Set)
		}
	}
}

var (
	fileNote   = regexp.MustCompile(`MIDI file (\w+)/([\w.-]+)`)
	grooveNote = regexp.MustCompile(`MMA groove ([\w:+/]+)`)
	packages   = map[string]string{"openmsx": "openttd-openmsx", "simutrans": "simutrans-data", "freedoom": "freedoom",
		"planetblupi": "planetblupi-music-midi"}
)

// The corpus is what the ear is judged by: none of its MIDI files may be in the
// training list, and every groove must be on the list of those that `make
// arrange` leaves out.
func TestCorpusIsNotTrainedOn(t *testing.T) {
	const manifest = "../../../shared/corpus/manifest.tsv"
	f, err := os.Open(manifest)
	if err != nil {
		t.Skipf("NOT CHECKED: %v", err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comma, r.LazyQuotes = '\t', true
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	sources := map[string]string{}
	for _, it := range items(t) {
		sources[it.Source] = it.Set
	}
	checked := 0
	for _, row := range rows[1:] {
		id, notes := row[0], row[14]
		if m := fileNote.FindStringSubmatch(notes); m != nil {
			checked++
			name := packages[m[1]] + "/" + m[2]
			if packages[m[1]] == "" {
				t.Errorf("%s: a package that this test does not know: %s", id, m[1])
			}
			if set, used := sources[name]; used {
				t.Errorf("%s: %s is in songs.tsv as %s", id, name, set)
			}
			if !held("file", name) {
				t.Errorf("%s: %s is not in heldout.tsv", id, name)
			}
		}
		if m := grooveNote.FindStringSubmatch(notes); m != nil {
			checked++
			for _, groove := range strings.FieldsFunc(m[1], func(r rune) bool { return r == '+' || r == '/' }) {
				if !held("groove", groove) {
					t.Errorf("%s: groove %s is not in heldout.tsv", id, groove)
				}
			}
		}
	}
	if checked < 20 {
		t.Errorf("only %d rows of the corpus name a file or groove", checked)
	}
}

func held(kind, name string) bool { return learn.IsHeldOut(kind, name) }
