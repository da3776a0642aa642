package beat_test

import (
	"fmt"
	"testing"

	"onphrase/samples/synth"
)

// Music that was cut on count 1, or just after it, begins with that count.
func TestCutOnCount1(t *testing.T) {
	const rate = 22050
	s := song(synth.BackBeat, 124, rate)
	whole := synth.Render(s)
	one := s.Truth().Beats[32]
	for _, after := range []float64{-0.01, 0, 0.01, 0.02} { // [s]
		t.Run(fmt.Sprint(after), func(t *testing.T) {
			from := int((one.Time + after) * rate)
			track := analyze(t, stereo(&synth.Sound{Rate: rate, Left: whole.Left[from:], Right: whole.Right[from:]}))
			if len(track.Beats) == 0 {
				t.Fatal(track.Problem)
			}
			if track.Beats[0] > 0.015 || track.BeatInBar[0] != 1 {
				t.Fatalf("the first count is at %.3f s, count %d of the bar; want the first sample, count 1", track.Beats[0],
					track.BeatInBar[0])
			}
			if track.Phrases[0].Time > 0.015 {
				t.Errorf("the first phrase starts at %.3f s", track.Phrases[0].Time)
			}
		})
	}
}
