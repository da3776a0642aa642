package main

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/beat/score"
)

// three are songs of two makers with figures that are easily reckoned.
func three() []result {
	of := func(id, maker, vocals string, bpm, f, one, trust float64) result {
		s := counted(8, 0.5)
		s.id, s.source, s.style, s.maker, s.vocals, s.bpm, s.constant = id, "set", "pop", maker, vocals, bpm, true
		r := result{song: s, one: one, phrase: math.NaN(), track: beat.Track{Duration: 60}}
		r.F, r.CMLt, r.AMLt = f, f, f
		r.Acc1, r.Acc2, r.bpmError = true, true, 0.01
		r.errs = []float64{-0.002, 0.004}
		r.track.Trust.Beat, r.track.Trust.Count1 = trust, trust
		r.miss = r.classify()
		return r
	}
	a := of("a", "we", "sung", 100, 1, 1, 0.95)
	a.found = []found{{mark: mark{kind: chorus}, start: true, inside: true, trust: 0.95}}
	b := of("b", "we", "none", 130, 0.5, math.NaN(), 0.6)
	b.steps = []step{{1, 0.8, 0}, {17, 0.8, 8}}
	return []result{a, b, of("c", "they", "none", 131, 0.9, 0.5, 0.2)}
}

// line is the line of a table that begins with these words.
func line(t *testing.T, table, name string) []string {
	t.Helper()
	for l := range strings.Lines(table) {
		if rest, ok := strings.CutPrefix(strings.TrimSpace(l), name+" "); ok {
			return strings.Fields(rest)
		}
	}
	t.Fatalf("no line %q in\n%s", name, table)
	return nil
}

func TestTheTable(t *testing.T) {
	var out bytes.Buffer
	report(&out, three(), 6)
	table := out.String()
	// n, F, CMLt, AMLt, count 1, phrase, chorus, part, turn, Acc1
	for name, want := range map[string][]string{
		"we":            {"2", "0.750", "0.750", "0.750", "1.000", "-", "1.000", "-", "0.500", "1.000"},
		"they":          {"1", "0.900", "0.900", "0.900", "0.500", "-", "-", "-", "-", "1.000"},
		"vocals none":   {"2", "0.700", "0.700", "0.700", "0.500", "-", "-", "-", "0.500", "1.000"},
		"vocals sung":   {"1", "1.000", "1.000", "1.000", "1.000", "-", "1.000", "-", "-", "1.000"},
		"120-":          {"2", "0.700", "0.700", "0.700", "0.500", "-", "-", "-", "0.500", "1.000"},
		"trust 0.9-1.0": {"1", "1.000", "1.000", "1.000", "1.000", "-", "1.000", "-", "-", "1.000"},
		"trust   <0.5":  {"1", "0.900", "0.900", "0.900", "0.500", "-", "-", "-", "-", "1.000"},
		"all":           {"3", "0.800", "0.800", "0.800", "0.750", "-", "1.000", "-", "0.500", "1.000"},
	} {
		if got := line(t, table, name); !slices.Equal(got[:len(want)], want) {
			t.Errorf("%s: %v, not %v", name, got[:len(want)], want)
		}
	}
	if got := line(t, table, "all"); got[len(got)-2] != "3.0" || got[len(got)-1] != "+1.0" { // of 2 and 4 ms; of -2 and +4
		t.Errorf("error and bias: %v", got[len(got)-2:])
	}
	for _, part := range []string{
		"3 within 0.05 BPM", "worst 0.010", "misses (F < 0.9):\n  b ", "count 1 wrong (F < 0.9):\n  c ",
		"cost: 2.00 CPU s per minute of audio, 30 x real time",
	} {
		if !strings.Contains(table, part) {
			t.Errorf("%q is missing in\n%s", part, table)
		}
	}
}

// Where the octave is in doubt, the level that was found counts.
func TestLevelsAreReported(t *testing.T) {
	all := three()
	all[1].doubt, all[1].level = "octave", level{score.Result{F: 1, CMLt: 1, AMLt: 1}, score.Tempo{Acc1: true}}
	var out bytes.Buffer
	reportLevels(&out, all)
	want := "on the 1 tracks whose octave is in doubt: F 0.333 CMLt 0.333 AMLt 0.333 Acc1 0.333"
	if !strings.Contains(out.String(), want) {
		t.Error(out.String())
	}
}

// Without a song of one tempo there is no line of tempi.
func TestNoConstantTempo(t *testing.T) {
	all := three()
	for i := range all {
		all[i].constant = false
	}
	var out bytes.Buffer
	if reportTempo(&out, all); out.Len() > 0 {
		t.Error(out.String())
	}
}

// What a manifest does not say has no rows.
func TestNoRowsForNothing(t *testing.T) {
	all := three()
	for i := range all {
		all[i].maker, all[i].vocals = "", ""
	}
	var out bytes.Buffer
	report(&out, all, 6)
	if n := strings.Count(out.String(), "\n                 3 "); n > 0 || strings.Contains(out.String(), "vocals") {
		t.Errorf("there is a row of makers or vocals:\n%s", out.String())
	}
}

func TestTrustIsHeldAgainstWhatWasRight(t *testing.T) {
	var out bytes.Buffer
	reportTrust(&out, three())
	// .2: F .9 is right; .6: .5 is not; .95: right.
	for _, want := range []string{
		"0.10 - 0.30      1   0.20   1.00", "0.50 - 0.70      1   0.60   0.00", "0.95 - 1.00      1   0.95   1.00",
		"expected calibration error 0.483", // (.8 + .6 + .05) / 3
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is missing in\n%s", want, out.String())
		}
	}
}

func TestOddPhrasesAreConfused(t *testing.T) {
	r := result{song: song{id: "x"}}
	r.odd = []score.OddCase{{Time: 10, Counts: 8, Found: 8}, {Time: 20, Counts: 16, Found: 32}, {Time: 30, Counts: 8}}
	r.foundOdd = []score.OddCase{{Time: 10, Counts: 8, Found: 8}, {Time: 50, Counts: 16, Found: 32}}
	var out bytes.Buffer
	reportOdd(&out, []result{r})
	for _, want := range []string{
		"1 of 3 right with their length, 1 of 2 found are true", "found phrase of 32", "found none of 0",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is missing in\n%s", want, out.String())
		}
	}
}

func TestCSV(t *testing.T) {
	file := filepath.Join(t.TempDir(), "out.csv")
	if err := writeCSV(file, three()); err != nil {
		t.Fatal(err)
	}
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) != 4 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	b := map[string]string{}
	for i, name := range rows[0] {
		b[name] = rows[2][i]
	}
	for name, want := range map[string]string{
		"id": "b", "F": "0.500", "count1": "NaN", "truth": "130.000", "miss": "phase",
	} {
		if b[name] != want {
			t.Errorf("%s of b is %q, not %q", name, b[name], want)
		}
	}
}

func TestMedian(t *testing.T) {
	if m := median([]float64{3, 1, 2, 10}); m != 2.5 {
		t.Errorf("%g", m)
	}
	if !math.IsNaN(median(nil)) {
		t.Error("nothing has a median")
	}
	if d := medianInterval([]float64{0, 0.5, 1, 3}); d != 0.5 {
		t.Errorf("%g", d)
	}
}
