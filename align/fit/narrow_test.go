package fit

import (
	"math/rand/v2"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
)

// Where all ways are followed, the narrow search finds what the exact one
// finds; where few are, never less than what it costs.
func TestNarrow(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 7))
	same, dearer := 0, 0
	for range 60 {
		j := smallJob(r, 1+r.IntN(4), 8, 5)
		class, problems := plan.ParseWith(j.File, j.Src, j.Known)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		find := func(followed int) *node {
			choices, ok := newChoices(class, 0, j.Tracks, j.Prices)
			if !ok {
				t.Fatal("no music")
			}
			if followed == 0 {
				return newSearch(choices, forBest).found()
			}
			return newSearch(choices, forAny).narrow(followed)
		}
		exact, all, few := find(0), find(1<<20), find(10)
		if exact == nil {
			continue
		}
		if all.cost != exact.cost {
			t.Errorf("%d, exact %d:\n%s", all.cost, exact.cost, j.Src)
		}
		switch {
		case few == nil || few.cost > exact.cost:
			dearer++
		case few.cost < exact.cost:
			t.Errorf("%d with few ways, exact %d:\n%s", few.cost, exact.cost, j.Src)
		default:
			same++
		}
	}
	if same < 30 {
		t.Errorf("few ways find the best plan of %d classes only, of %d a dearer one", same, dearer)
	}
}

// A class that is far too long for its music, in rounds: what can be mended
// is mended all the same.
func TestMuchIsLeft(t *testing.T) {
	j := Job{File: "class.yaml", Known: plan.Builtin(), Prices: Usual(), Tracks: map[string]beat.Track{"a.mp3": song("a.mp3", 124, 32, 32, 4, 32, 32, 32)}, Src: []byte(`onphrase: 1
class: Full
parts:
  - part: Legs
    kind: strength
    tracks: [a.mp3]
    do:
      - superset: Legs and back
        rounds: 2
        do:
          - {set: squat, reps: "4 x 4-4, 8 x 1-1, 8 x pulse"}
          - {set: bent-over row, reps: "8 x 2-1-2-1", setup: 8 counts}
      - {repeat: squat}
      - {interval: burpee, series: 8 x 20s/10s}
      - {interval: squat to press, time: 45s, on: clock}
      - {set: split squat, reps: "16 x 1-1", sides: both}
`)}
	res, err := Search(j)
	if err != nil {
		t.Fatal(err)
	}
	if got := string(res.Plans[0].Src); strings.Contains(got, "1-1\"") ||
		!strings.Contains(got, "8 x 2-2\", sides: both") {
		t.Errorf("rhythms that are too fast are left:\n%s", got)
	}
}
