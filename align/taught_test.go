package align

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat"
	"onphrase/plan"
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

// Energy and use of a phrase are those of what was heard where it begins,
// also where a phrase as taught is two as heard.
func TestTaughtUse(t *testing.T) {
	track := song{file: "a.mp3", bpm: 120, pickup: 2, one: 1, duration: 49, phrases: "32 32 32"}.track()
	for i, p := range []beat.Phrase{{Energy: beat.Low, Use: beat.SetUp}, {Energy: beat.High, Use: beat.Work},
		{Energy: beat.Low, Use: beat.Finish}} {
		track.Phrases[i].Energy, track.Phrases[i].Use = p.Energy, p.Use
	}
	for taught, want := range map[plan.Taught][]beat.Use{
		plan.AsHeard: {beat.SetUp, beat.Work, beat.Finish}, plan.Half: {beat.SetUp, beat.Finish},
		plan.Double: {beat.SetUp, beat.SetUp, beat.Work, beat.Work, beat.Finish, beat.Finish},
	} {
		var got []beat.Use
		for _, p := range newGrid(&track, &plan.Part{Taught: taught}).taught().Phrases {
			got = append(got, p.Use)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("taught %v: %s", taught, diff)
		}
	}
}
