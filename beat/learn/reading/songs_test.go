package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"onphrase/beat/learn"
)

func items(t *testing.T, file string) []learn.Item {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	all, err := learn.ParseItems(string(text))
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// What the weights are fitted to is none of the music that accuracy is reported
// on, and what teaches how far to believe the ear is new to it.
func TestMusicIsNewToTheEar(t *testing.T) {
	sets, seeds, fonts := map[string]string{}, map[uint64]string{}, map[string]bool{}
	for _, it := range items(t, "../songs.tsv") {
		seeds[it.Seed] = it.Set
		if it.Kind == "midi" {
			sets[strings.TrimRight(it.Source, "-12")] = it.Set
		}
		if it.Set != "check" && it.Font != "-" {
			fonts[it.Font] = true
		}
	}
	fresh := 0
	for _, it := range items(t, "songs.tsv") {
		switch it.Set {
		case "train":
			if set := seeds[it.Seed]; set == "check" || set == learn.HeldSet {
				t.Errorf("%s: its seed is in use in set %s", it.ID, set)
			}
			if it.Kind == "midi" && sets[strings.TrimRight(it.Source, "-12")] == learn.HeldSet {
				t.Errorf("%s: %s is held out", it.ID, it.Source)
			}
			continue
		case "check":
			fresh++
		default:
			t.Errorf("%s: set %q", it.ID, it.Set)
		}
		if set, ok := seeds[it.Seed]; ok {
			t.Errorf("%s: its seed is in use in set %s", it.ID, set)
		}
		if it.Kind == "midi" && sets[strings.TrimRight(it.Source, "-12")] != "check" {
			t.Errorf("%s: %s is not of set check", it.ID, it.Source)
		}
		if fonts[it.Font] {
			t.Errorf("%s: %s plays other sets, too", it.ID, it.Font)
		}
	}
	if fresh < 300 {
		t.Errorf("only %d tracks new to the ear", fresh)
	}
}

// A clue that tells the right reading is found, and one that does not is not.
func TestFit(t *testing.T) {
	var all []example
	r := rand.New(rand.NewPCG(1, 2))
	for i := range 200 {
		e := example{piece: fmt.Sprint(i)}
		for k := range 5 {
			right, noise := 0.0, r.NormFloat64()
			if k == i%5 {
				right = 1
			}
			e.clues = append(e.clues, []float64{right, noise})
			e.f = append(e.f, 0.4+0.6*right)
		}
		all = append(all, e)
	}
	w := fit(all, 0.01)
	if w[0] < 3 || math.Abs(w[1]) > 0.3 {
		t.Errorf("weights %.2f", w)
	}
	if g := crossValidated(all, 0.01); g < 0.99 {
		t.Errorf("F %.2f in cross-validation", g)
	}
}
