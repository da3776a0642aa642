package plan_test

import (
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"onphrase/plan"
)

var (
	oneOne   = plan.Rhythm{Down: 1, Up: 1}
	twoTwo   = plan.Rhythm{Down: 2, Up: 2}
	fourFour = plan.Rhythm{Down: 4, Up: 4}
)

// parseClean parses a file that must have no problems.
func parseClean(t *testing.T, src []byte) *plan.Class {
	t.Helper()
	c, problems := plan.Parse("class.yaml", src)
	for _, p := range problems {
		t.Errorf("unexpected problem: %s", p.In("class.yaml"))
	}
	return c
}

func TestParseReadsTheExampleOfTheProduct(t *testing.T) {
	src, err := os.ReadFile("testdata/harbour.yaml")
	if err != nil {
		t.Fatal(err)
	}
	got := parseClean(t, src)
	want := &plan.Class{
		Pos: plan.Pos{Line: 1, Col: 1}, Name: "Harbour Strong 45", Slot: 2700, Music: "music/",
		MusicPos: plan.Pos{Line: 4, Col: 8},
		Parts: []plan.Part{{
			Pos: plan.Pos{Line: 6, Col: 5}, Name: "Warm-up", Kind: plan.WarmUp,
			Tracks: []plan.TrackRef{{Pos: plan.Pos{Line: 8, Col: 14}, File: "tidewater.mp3"}},
			Start:  plan.Start{Pos: plan.Pos{Line: 9, Col: 12}, Phrase: 1},
			Items: []plan.Item{{
				Pos: plan.Pos{Line: 11, Col: 9}, Name: "A",
				Work: plan.Block{Sides: plan.Both, Times: 2, Moves: []plan.Step{
					{Pos: plan.Pos{Line: 15, Col: 13}, Move: "march", Counts: 8},
					{Pos: plan.Pos{Line: 16, Col: 13}, Move: "step touch", Counts: 8},
					{Pos: plan.Pos{Line: 17, Col: 13}, Move: "heel curl", Counts: 16},
				}},
			}},
		}, {
			Pos: plan.Pos{Line: 18, Col: 5}, Name: "Round 1", Kind: plan.Strength,
			Tracks: []plan.TrackRef{{Pos: plan.Pos{Line: 20, Col: 14}, File: "slow-ferry.mp3"}},
			Items: []plan.Item{
				{Pos: plan.Pos{Line: 22, Col: 9}, Name: "standing climber",
					Work: plan.Interval{Move: "standing climber", Time: plan.Length{Seconds: 30}}},
				{Pos: plan.Pos{Line: 23, Col: 9}, Name: "bent-over row",
					Work: plan.Set{Move: "bent-over row", Reps: []plan.Reps{{N: 4, Rhythm: twoTwo}, {N: 16, Rhythm: oneOne}},
						Weight: "heavy", Range: plan.FullRange}},
				{Pos: plan.Pos{Line: 24, Col: 9}, Name: "deadlift", Work: plan.Set{Move: "deadlift",
					Reps: []plan.Reps{{N: 4, Rhythm: fourFour}, {N: 8, Rhythm: twoTwo}}, Weight: "heavy", Range: plan.FullRange}},
				{Pos: plan.Pos{Line: 25, Col: 9}, Name: "one-arm row", Work: plan.Set{Move: "one-arm row",
					Reps: []plan.Reps{{N: 8, Rhythm: twoTwo}}, Range: plan.FullRange, Sides: plan.Both}},
				{Pos: plan.Pos{Line: 26, Col: 9}, Name: "water",
					Work: plan.Pause{Time: plan.Length{Seconds: 30}, Kind: plan.Water}},
			},
		}},
	}
	if diff := cmp.Diff(want, got, cmpopts.IgnoreFields(plan.Class{}, "Catalog")); diff != "" {
		t.Errorf("class differs (-want +got):\n%s", diff)
	}
}

// A class of 40 parts of 12 items, ten times what is usual.
func BenchmarkParse(b *testing.B) {
	src := "onphrase: 1\nclass: Harbour\nparts:\n"
	for range 40 {
		src += "  - part: Round\n    tracks: [ferry.mp3]\n    do:\n"
		for range 12 {
			src += "      - {set: bent-over row, reps: \"4 x 2-2, 16 x 1-1\", weight: heavy, sides: both}\n"
		}
	}
	if _, problems := plan.Parse("class.yaml", []byte(src)); len(problems) > 0 {
		b.Fatal(problems)
	}
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		plan.Parse("class.yaml", []byte(src))
	}
}
