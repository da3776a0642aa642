package main

import (
	"math"
	"testing"

	"onphrase/beat"
	"onphrase/beat/score"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 || math.IsNaN(a) && math.IsNaN(b) }

func TestCount1(t *testing.T) {
	s := counted(64, 0.5)
	shifted := heardAs(s, 1)
	shifted.BeatInBar = nil
	for i := range s.beats {
		shifted.BeatInBar = append(shifted.BeatInBar, (i+1)%4+1)
	}
	half := beat.Track{}
	for i := 0; i < 64; i += 2 { // counted at half tempo, count 1 in every second bar
		half.Beats = append(half.Beats, s.beats[i])
		half.BeatInBar = append(half.BeatInBar, i/2%4+1)
	}
	for _, c := range []struct {
		name  string
		doubt string
		track beat.Track
		want  float64
	}{
		{"right", "", heardAs(s, 1), 1},
		{"a count late", "", shifted, 0},
		{"half tempo, where the truth allows it", "octave", half, 1},
		{"half tempo, where it does not", "", half, 2.0 / 3}, // all 8 found are among the 16
		{"only the file's bar line", "downbeat", heardAs(s, 1), math.NaN()},
	} {
		s.doubt = c.doubt
		if got := count1(s, c.track); !near(got, c.want) {
			t.Errorf("%s: %.3f, not %.3f", c.name, got, c.want)
		}
	}
}

func TestLevelsOfTheTruth(t *testing.T) {
	s := counted(8, 0.5)
	if got := everySecond(s.beats, s.position); !same(got, []float64{0, 1, 2, 3}) {
		t.Errorf("half: %v", got)
	}
	if got := doubled(s.beats[:3]); !same(got, []float64{0, 0.25, 0.5, 0.75, 1}) {
		t.Errorf("double: %v", got)
	}
	// Bars of twice the counts, from the first or the second; bars of half of them.
	want := [][]float64{{0}, {2}, {0, 1, 2, 3}}
	got := levels(s)
	if len(got) != len(want) {
		t.Fatalf("%v, not %v", got, want)
	}
	for i := range want {
		if !same(got[i], want[i]) {
			t.Errorf("level %d: %v, not %v", i, got[i], want[i])
		}
	}
}

func same(a, b []float64) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !near(a[i], b[i]) {
			return false
		}
	}
	return true
}

// What is counted at half tempo is right at its own level, but only where the
// truth leaves the octave open; off-beats are right at none.
func TestBestLevel(t *testing.T) {
	of := func(doubt string, beats []float64, bpm float64) level {
		s := counted(120, 0.5)
		s.doubt, s.bpm = doubt, 120
		r := result{song: s, track: beat.Track{Beats: beats, BPM: bpm}}
		r.Result, r.Tempo = score.Beats(s.beats, beats), score.CompareTempo(120, bpm)
		return r.bestLevel()
	}
	s := counted(120, 0.5)
	half := everySecond(s.beats, s.position)
	if l := of("octave", half, 60); !near(l.F, 1) || !l.Acc1 {
		t.Errorf("half tempo, open: F %.2f, Acc1 %t", l.F, l.Acc1)
	}
	if l := of("", half, 60); near(l.F, 1) || l.Acc1 {
		t.Errorf("half tempo, not open: F %.2f, Acc1 %t", l.F, l.Acc1)
	}
	if l := of("octave", doubled(s.beats), 240); !near(l.F, 1) || !l.Acc1 {
		t.Errorf("double tempo, open: F %.2f, Acc1 %t", l.F, l.Acc1)
	}
	var off []float64
	for _, b := range s.beats {
		off = append(off, b+0.25)
	}
	if l := of("octave", off, 120); l.F > 0.1 {
		t.Errorf("off-beats: F %.2f", l.F)
	}
}

func TestKindsOfMisses(t *testing.T) {
	for _, c := range []struct {
		want string
		r    result
	}{
		{"refused", result{track: beat.Track{Problem: "no beat"}}},
		{"", result{Result: score.Result{F: 0.95}}},
		{"tempo", result{Result: score.Result{F: 0.3}}},
		{"octave", result{Result: score.Result{F: 0.6}, Tempo: score.Tempo{Acc2: true}}},
		{"off-beat", result{Result: score.Result{F: 0.1, AMLt: 0.9}, Tempo: score.Tempo{Acc1: true, Acc2: true}}},
		{"phase", result{Result: score.Result{F: 0.7, CMLt: 0.6, AMLt: 0.7}, Tempo: score.Tempo{Acc1: true, Acc2: true}}},
	} {
		if got := c.r.classify(); got != c.want {
			t.Errorf("%q, not %q", got, c.want)
		}
	}
}

func TestOctaveError(t *testing.T) {
	for _, c := range []struct{ bpm, want float64 }{{120, 0}, {120.25, 0.25}, {60.1, 0.2}, {241, 0.5}, {90, 30}} {
		if got := octaveError(120, c.bpm); !near(got, c.want) {
			t.Errorf("%g against 120: %g off, not %g", c.bpm, got, c.want)
		}
	}
}

func TestPhrasesAreHeldAgainstTheirTruth(t *testing.T) {
	s := counted(140, 0.5)
	for _, p := range [][2]int{{0, 32}, {32, 8}, {40, 32}, {72, 32}, {104, 36}} {
		s.phrases = append(s.phrases, score.Section{Time: s.beats[p[0]], Counts: p[1]})
	}
	// The tag of 8 is missed, and with it the next start; the rest is right.
	r := result{song: s, track: heardAs(s, 0.9, 0, 32, 72, 104)}
	r.track.Phrases[1].Trust = 0.6
	r.measurePhrases()
	if want := 2 * 1 * 0.8 / 1.8; !near(r.phrase, want) { // 4 of 4 found are right, 4 of 5 are found
		t.Errorf("phrase F %.3f, not %.3f", r.phrase, want)
	}
	if len(r.odd) != 1 || r.odd[0].Counts != 8 || r.odd[0].Found != 40 || r.odd[0].Right() {
		t.Errorf("odd phrases of the truth: %+v", r.odd)
	}
	if len(r.starts) != 4 || r.starts[1] != (start{0.6, score.Right}) {
		t.Errorf("starts: %+v", r.starts)
	}
}
