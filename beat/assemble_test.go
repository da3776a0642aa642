package beat

import (
	"testing"

	"onphrase/beat/reading"
)

// A reading that is certain leaves no odds to share: its rivals have none,
// rather than odds that are no number and cannot be written as JSON.
func TestRivalsOfACertainReading(t *testing.T) {
	all := []reading.Reading{{Period: 0.5, Odds: 1}, {Period: 1}, {Period: 0.25}}
	if got := rivals(all, 0.3); len(got) != 0 {
		t.Errorf("rivals %v, want none", got)
	}
}

// Bars may start afresh where the tempo changes: at the first count of the new
// one.
func TestSeams(t *testing.T) {
	track := Track{Beats: []float64{1, 2, 3, 3.5, 4, 5},
		TempoChanges: []TempoChange{{Time: 3, BPM: 120}, {Time: 4, BPM: 60}}}
	if got := track.seams(); len(got) != 2 || got[0] != 2 || got[1] != 4 {
		t.Errorf("seams %v, want [2 4]", got)
	}
}
