package beat_test

import (
	"fmt"
	"math"
	"testing"

	"onphrase/samples/synth"
)

// The bare clicks of a metronome are no music to the ear, but they have a beat.
func TestBareClicks(t *testing.T) {
	for bpm := 60.0; bpm <= 200; bpm += 10 {
		t.Run(fmt.Sprint(bpm), func(t *testing.T) {
			for _, counts := range []int{60, 100} {
				track := analyze(t, mono(synth.Clicks(synth.Steady(bpm, 4, counts, 0.5), 44100)))
				if math.Abs(track.BPM-bpm) > 0.05 {
					t.Errorf("%d clicks: %.2f BPM, trust %.2f, %s", counts, track.BPM, track.Trust.Beat, track.Problem)
				}
			}
		})
	}
}
