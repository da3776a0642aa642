package learn_test

import (
	"strings"
	"testing"

	"onphrase/beat/learn"
	"onphrase/beat/learn/score"
)

func TestDoubt(t *testing.T) {
	for _, c := range []struct {
		kind, source string
		bpm          float64
		want         string
	}{
		{"synth", "house", 126, ""}, {"synth", "drum&bass", 174, learn.OctaveDoubt},
		{"midi", "mma/casio-rock-1", 160, learn.OctaveDoubt},
		{"midi", "mma/casio-rock-1", 159.9, ""}, {"synth", "half-time", 132, learn.OctaveDoubt},
		{"synth", "trap", 140, learn.OctaveDoubt},
		{"midi", "mma/half-time", 132, ""}, {"synth", "ballad", 57, ""},
	} {
		if got := (learn.Item{Kind: c.kind, Source: c.source}).Doubt(c.bpm); got != c.want {
			t.Errorf("%s %s at %v: %q, want %q", c.kind, c.source, c.bpm, got, c.want)
		}
	}
}

// The styles that are in doubt by construction are those, and only those, whose
// every snare sounds on count 3 alone.
func TestHalfTimeStylesHaveTheirSnareOnThree(t *testing.T) {
	for _, s := range score.All() {
		half := len(s.Snare) > 0 && s.Meter == 4 && s.Steps == 4
		for _, p := range s.Snare {
			half = half && len(p) == 16 && strings.IndexAny(p, "xX") == 8 && strings.LastIndexAny(p, "xX") == 8
		}
		got := (learn.Item{Kind: "synth", Source: s.Name}).Doubt(100) == learn.OctaveDoubt
		if got != half {
			t.Errorf("%s: in doubt %v, snare on 3 alone %v", s.Name, got, half)
		}
	}
}
