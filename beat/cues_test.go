package beat

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat/ear"
	"onphrase/beat/grid"
)

// Where sound led for a stretch, the ear does not say which of its counts is
// count 1, though it led elsewhere.
func TestOnesOnlyWhereTheEarLed(t *testing.T) {
	hearing := ear.Activation{FPS: 10, Beat: make([]float64, 60), One: make([]float64, 60)}
	for i := range hearing.One {
		hearing.One[i] = 0.8
	}
	beats := []float64{1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5}
	parts := []part{{Grid: grid.Grid{Beats: beats[:3]}, heard: true}, {Grid: grid.Grid{Beats: beats[3:6]}},
		{Grid: grid.Grid{Beats: beats[6:]}, heard: true}, {}}
	led := cues{heard: true, hearing: hearing}
	if diff := cmp.Diff([]float64{0.8, 0.8, 0.8, 0, 0, 0, 0.8, 0.8}, led.ones(beats, parts)); diff != "" {
		t.Error(diff)
	}
	led.heard = false
	if got := led.ones(beats, parts); got != nil {
		t.Errorf("%v, want nothing where the ear did not lead at all", got)
	}
}
