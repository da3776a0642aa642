package align

import (
	"testing"

	"onphrase/beat"
)

// Sound reads the outline where a count falls.
func TestTaughtSound(t *testing.T) {
	track := &Taught{Counts: []float64{0, 0.5, 1, 1.5}, Outline: beat.Outline{0, -20, -20, 0}}
	for count, want := range map[int]float64{-1: 0, 0: 1, 1: 0.1, 2: 0.1, 3: 1, 4: 0} {
		if got := track.Sound(count); got < want-1e-9 || got > want+1e-9 {
			t.Errorf("count %d: %g, want %g", count, got, want)
		}
	}
}
