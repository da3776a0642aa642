package fit

import (
	"slices"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
)

// dear is the price of every change but the one that a case is about.
const dear = 60

// Each kind of change, where it is the cheapest way out, is found, and is what
// every combination of changes comes to as well.
func TestEachKindAgainstBruteForce(t *testing.T) {
	tests := []struct {
		kind  Kind
		also  []Kind // what makes it dearer
		items string
		song  beat.Track
		diff  string // of the file
	}{
		{Reps, []Kind{Rep, Uneven}, "{set: squat, reps: 7 x 4-4}; {set: wide squat, reps: 4 x 4-4}",
			song("a.mp3", 128, 32, 32, 32, 32), "reps: 8 x 4-4"},
		{Split, []Kind{Moved}, "{set: squat, reps: 6 x 2-2}; {set: wide squat, reps: 8 x 2-2}",
			song("a.mp3", 128, 32, 32, 32, 32), `reps: "2 x 4-4, 4 x 2-2"`},
		{Slower, nil, "{set: squat, reps: 16 x 1-1}", song("a.mp3", 128, 32, 32, 32), "reps: 8 x 2-2"},
		{Hold, []Kind{Held}, "{set: squat, reps: 2 x 4-4}; {set: wide squat, reps: 8 x 4-4}",
			song("a.mp3", 128, 32, 32, 32, 32), "{pause: hold, time: 2 eights}"},
		{OnPhrase, []Kind{Held}, "{set: squat, reps: 4 x 4-4}; {set: wide squat, reps: 8 x 2-2}",
			song("a.mp3", 128, 32, 16, 32, 32), "on: phrase"},
		{Start, []Kind{Phrase}, "{set: squat, reps: 8 x 2-2}", song("a.mp3", 128, 16, 32, 32), "start: phrase 2"},
		{Swap, nil, "{set: squat, reps: 8 x 4-4}; {set: wide squat, reps: 2 x 4-4}", song("a.mp3", 128, 16, 32, 32),
			"wide squat, reps: 2 x 4-4}\n      - {set: squat"},
		{BPM, []Kind{Percent}, "{set: deadlift, reps: 8 x 2-2}", song("a.mp3", 136, 32, 32, 32), "bpm: 133"},
		{Time, []Kind{TimeStep}, "{interval: plank, time: 40s}", song("a.mp3", 120, 32, 32), "time: 30s"},
	}
	for _, tt := range tests {
		t.Run(string(tt.kind), func(t *testing.T) {
			j := Job{File: "class.yaml", Known: plan.Builtin(), Tracks: map[string]beat.Track{"a.mp3": tt.song}, Prices: Usual()}
			for kind := range j.Prices {
				switch {
				case kind == tt.kind || slices.Contains(tt.also, kind):
					j.Prices[kind] = 1
				case kind != Fix && kind != Watch:
					j.Prices[kind] = dear
				}
			}
			j.Prices[Fix], j.Prices[Watch] = 2*dear, 2*dear
			j.Src = []byte("onphrase: 1\nclass: T\nparts:\n  - part: One\n    kind: strength\n    tracks: [a.mp3]\n    do:\n      - " +
				strings.ReplaceAll(tt.items, "; ", "\n      - ") + "\n")
			choices, _ := newChoices(parsed(t, j.Src), 0, j.Tracks, j.Prices)
			s := newSearch(choices, forBest)
			got := s.found()
			b := &brute{job: j, choices: choices, best: got.cost + 1}
			b.everything()
			if b.best != got.cost {
				t.Errorf("search %d, brute force %d (of %d classes)", got.cost, b.best, b.tried)
			}
			res, err := Search(j)
			if err != nil {
				t.Fatal(err)
			}
			best := res.Plans[0]
			if len(best.Changes) != 1 || best.Changes[0].Kind != tt.kind {
				t.Errorf("changes: %+v", best.Changes)
			}
			if !strings.Contains(string(best.Src), tt.diff) || j.Prices.left(best.After.Findings) > 0 {
				t.Errorf("no %q, or something is left, in\n%s", tt.diff, best.Src)
			}
		})
	}
}
