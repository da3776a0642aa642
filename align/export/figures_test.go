package export

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/align"
	"onphrase/plan"
)

func TestItemOf(t *testing.T) {
	for want, r := range map[string]align.Row{
		"squat":              {Item: "squat"},
		"A, pass 2 of 4":     {Item: "A", Pass: 2, Passes: 4, Stages: 1},
		"A, stage 2 of 3":    {Item: "A", Stage: 2, Stages: 3, Pass: 2, Passes: 3},
		"A, stage 2, pass 3": {Item: "A", Stage: 2, Stages: 3, Pass: 3, Passes: 6},
		"jack, 3 of 8": {Item: "jack",
			Rounds: []align.Round{{Of: "jack", Round: 3, Rounds: 8, Series: true}}},
		"rest": {Item: "rest",
			Rounds: []align.Round{{Of: "jack", Round: 3, Rounds: 8, Series: true}}},
		"squat, round 2 of 3, Legs 1 of 2": {Item: "squat",
			Rounds: []align.Round{{Round: 2, Rounds: 3}, {Of: "Legs", Round: 1, Rounds: 2}}},
	} {
		if got := itemOf(r); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A hold between two sets of a round is part of it, one after the last is not.
func TestRoundAt(t *testing.T) {
	set := func(item string, legs int) align.Row {
		r := align.Row{Item: item, Kind: align.SetRow}
		if legs > 0 {
			r.Rounds = []align.Round{{Of: "Legs", Round: legs, Rounds: 2}}
		}
		return r
	}
	hold := align.Row{Item: "hold", Kind: align.HoldRow}
	rows := []align.Row{set("squat", 1), hold, set("deadlift", 1), set("squat", 2), hold, set("row", 0)}
	for i := range rows {
		rows[i].Row = i + 1
	}
	round, got := "", []string{}
	for i := range rows {
		round = roundAt(rows, i, round)
		got = append(got, round)
	}
	want := []string{"Legs 1 of 2", "Legs 1 of 2", "Legs 1 of 2", "Legs 2 of 2", "", ""}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// The class in figures stands once on the sheet, and only what there is.
func TestFiguresOfTheClass(t *testing.T) {
	m := &align.CountMap{Class: "Figures", Rows: []align.Row{
		{Item: "row", Kind: align.SetRow, Row: 1, Side: "right", Mirror: "left", Reps: 8,
			Rhythm: align.Rhythm{Rhythm: plan.Rhythm{Down: 2, Up: 2}}, Pattern: "pull", SoFar: 8, OfAll: 24, Placed: true},
	}, Parts: []align.Part{{Part: "One", Row: 1}}}
	var bare bytes.Buffer
	if err := Text(&bare, m, Style{}); err != nil || strings.Contains(bare.String(), "shares") {
		t.Errorf("%v: nothing to say, and it says\n%s", err, bare.String())
	}
	m.Summary = align.Summary{
		Shares:   []align.Share{{Kind: "strength", Seconds: 600, Share: 0.75}, {Kind: "core", Seconds: 200, Share: 0.25}},
		Patterns: []align.Total{{Name: "pull", Reps: 24, Right: 8, Left: 16, Seconds: 90}},
		High:     40, Landings: 84,
		Kit: []align.Kit{{Item: "dumbbells", Weights: []string{"2 x 6 kg", "8 kg"}}, {Item: "mat"}},
	}
	for name, write := range map[string]func(*bytes.Buffer) error{
		"text":     func(b *bytes.Buffer) error { return Text(b, m, Style{}) },
		"markdown": func(b *bytes.Buffer) error { return writeMarkdown(b, m) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{
			"strength 10:00 (75 %), core 3:20 (25 %)", "pull 24 (8 right, 16 left) in 1:30", "0:40 high, about 84 hard landings",
			"dumbbells (2 x 6 kg; 8 kg), mat", "right (you left)", "8 of 24 pull reps so far",
		} {
			if strings.Count(b.String(), want) != 1 {
				t.Errorf("%s: %q is there %d times:\n%s", name, want, strings.Count(b.String(), want), b.String())
			}
		}
	}
}
