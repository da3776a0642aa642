package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

// listItems writes items as one line each: name, counts or seconds, rounds.
func listItems(items []plan.Item) []string {
	var all []string
	for _, it := range items {
		s := it.Name
		switch w := it.Work.(type) {
		case plan.Block:
			s += fmt.Sprintf(" %dc", w.Counts())
		case plan.Set:
			s += fmt.Sprintf(" %dc", w.Counts())
		case plan.Interval:
			s += fmt.Sprintf(" %gs", w.Time.Seconds)
		case plan.Pause:
			s += fmt.Sprintf(" %gs", w.Time.Seconds)
		}
		for _, r := range it.Rounds {
			s += fmt.Sprintf(", %s %s", r.Of, r)
		}
		all = append(all, fmt.Sprintf("%d: %s", it.Pos.Line, s))
	}
	return all
}

func TestParseWritesOutRounds(t *testing.T) {
	for name, c := range map[string]struct {
		rest string
		want []string
	}{
		"rounds of a part": {"    rounds: 2\n    do:\n      - {set: squat, reps: 8 x 2-2}\n      - {pause: water, time: 30s}\n", []string{
			"8: squat 32c,  round 1 of 2", "9: water 30s,  round 1 of 2", "8: squat 32c,  round 2 of 2",
			"9: water 30s,  round 2 of 2"}},
		"a superset": {"    do:\n      - superset: Legs\n        rounds: 2\n        do:\n          - {set: squat, reps: 8 x 2-2}\n          - {set: lunge, reps: 4 x 2-2}\n", []string{
			"10: squat 32c, Legs round 1 of 2", "11: lunge 16c, Legs round 1 of 2", "10: squat 32c, Legs round 2 of 2",
			"11: lunge 16c, Legs round 2 of 2"}},
		"a superset done once": {"    do:\n      - {superset: Legs, do: [{set: squat, reps: 8 x 2-2}]}\n",
			[]string{"7: squat 32c, Legs round 1 of 1"}},
		"a superset in a part": {"    rounds: 2\n    do:\n      - {superset: Legs, rounds: 2, do: [{set: squat, reps: 8 x 2-2}]}\n", []string{
			"8: squat 32c,  round 1 of 2, Legs round 1 of 2", "8: squat 32c,  round 1 of 2, Legs round 2 of 2",
			"8: squat 32c,  round 2 of 2, Legs round 1 of 2", "8: squat 32c,  round 2 of 2, Legs round 2 of 2"}},
		"a series": {"    do:\n      - {interval: jack, series: 2 x 20s / 10s}\n", []string{
			"7: jack 20s, jack interval 1 of 2", "7: rest 10s, jack interval 1 of 2", "7: jack 20s, jack interval 2 of 2",
			"7: rest 10s, jack interval 2 of 2"}},
		"a repeat": {"    do:\n      - {set: squat, reps: 8 x 2-2}\n      - {repeat: Squats}\n",
			[]string{"7: squat 32c", "8: squat 32c"}},
		"a repeat of the last of that name": {"    do:\n      - {set: squat, reps: 8 x 2-2}\n      - {set: squat, reps: 8 x 4-4}\n      - {repeat: squat}\n", []string{"7: squat 32c", "8: squat 64c", "9: squat 64c"}},
		"a repeat of a superset": {"    do:\n      - {superset: Legs, rounds: 2, do: [{set: squat, reps: 8 x 2-2}]}\n      - {repeat: legs}\n", []string{
			"7: squat 32c, Legs round 1 of 2", "7: squat 32c, Legs round 2 of 2", "8: squat 32c, Legs round 1 of 2",
			"8: squat 32c, Legs round 2 of 2"}},
	} {
		got := listItems(parseClean(t, []byte(inPart(c.rest))).Parts[0].Items)
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

// A repeat does the same work with the words it brings, and remembers where
// that work is written.
func TestParseRepeat(t *testing.T) {
	c := parseClean(t, []byte(inPart("    do:\n      - {set: squat, reps: 8 x 2-2, cue: low, easier: chair, on: phrase}\n      - {repeat: squat, cue: lower, setup: 8 counts}\n      - {repeat: squat}\n")))
	items := c.Parts[0].Items
	want := items[0]
	want.Pos, want.Repeats = plan.Pos{Line: 8, Col: 9}, plan.Pos{Line: 7, Col: 9}
	want.Cue, want.Setup = "lower", plan.Length{Counts: 8}
	if diff := cmp.Diff(want, items[1]); diff != "" {
		t.Errorf("repeat (-want +got):\n%s", diff)
	}
	want.Pos.Line = 9
	if diff := cmp.Diff(want, items[2]); diff != "" {
		t.Errorf("repeat of the repeat (-want +got):\n%s", diff)
	}
}

// A series is said once and set up once: before its first interval.
func TestParseSeriesSaysItsCueOnce(t *testing.T) {
	c := parseClean(t, []byte(inItem("- {interval: jack, series: 3 x 20s/10s, cue: go, setup: 8s, easier: half jack}")))
	for i, it := range c.Parts[0].Items {
		_, work := it.Work.(plan.Interval)
		if first := i == 0; (it.Cue == "go") != first || (it.Setup.Seconds == 8) != first || (it.Easier != "") != work {
			t.Errorf("item %d: %+v", i, it)
		}
	}
}

func TestParseRefusesBadRounds(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{"- {superset: S, rounds: ▶0, do: [{pause: water, time: 30s}]}", "rounds: 0 is out of range",
			"a whole number from 1 to 20"},
		{"- {superset: S, rounds: ▶3 times, do: [{pause: water, time: 30s}]}", `rounds: "3 times" is no whole number`,
			"3? Only the number is written here"},
		{"- ▶{superset: S}", "a superset needs do", "like do: and below it - {set: squat, reps: 8 x 2-2}"},
		{"- {superset: S, do: ▶[]}", "do is an empty list", "like do: and below it - {set: squat, reps: 8 x 2-2}"},
		{"- {superset: S, do: [{pause: water, time: 30s}], ▶times: 3}", `unknown key "times" in a superset`,
			"times belongs to a block"},
		{"- {superset: S, do: [▶{superset: T, do: [{pause: water, time: 30s}]}]}",
			`a superset stands inside the superset "S"`, "write its sets out here, or make two supersets one after the other"},
		{"- {repeat: ▶squat}", `no item above is called "squat"`,
			"a repeat names a block, set, interval or superset that stands above it"},
		{"- {set: squat, reps: 8 x 2-2}\n      - {repeat: ▶sqaut}", `no item above is called "sqaut"`, "squat?"},
		{"- {set: squat, reps: 8 x 2-2}\n      - {repeat: squat, ▶reps: 8 x 4-4}", `unknown key "reps" in a repeat`,
			"reps belongs to a set"},
		{"- {set: squat, reps: 8 x 2-2}\n      - {repeat: squat, ▶on: phrase}", `unknown key "on" in a repeat`,
			"a repeat may have repeat, cue, setup, easier, harder or known"},
		{"- ▶{block: A, repeat: 2, moves: [{move: march, counts: 32}]}", "an item is both a block and a repeat", "times: 2?"},
		{"- ▶{set: squat, reps: 8 x 2-2, repeat: 3}", "an item is both a set and a repeat", "a superset with rounds: 3?"},
		{"- {set: squat, reps: 8 x 2-2, ▶rounds: 3}", `unknown key "rounds" in a set`,
			"rounds belongs to a part or a superset"},
		{"- {interval: jack, series: ▶20s/10s}", `series: "20s/10s" does not say how often`, "like 8 x 20s/10s"},
		{"- {interval: jack, series: ▶8 x 20s}", `series: "8 x 20s" does not say how long the rest is`,
			"work/rest, like 8 x 20s/10s"},
		{"- {interval: jack, series: ▶0 x 20s/10s}", "series: 0 turns is out of range", "from 1 to 60"},
		{"- {interval: jack, series: 8 x ▶20/10s}", "series: 20 has no unit", "20s or 20 counts?"},
		{"- {interval: jack, series: 8 × 20s/ ▶10}", "series: 10 has no unit", "10s or 10 counts?"},
		{"- {interval: jack, series: 8 x 20s/10s, time: ▶30s}", "time and series do not go together", "keep one of them"},
		{"- {pause: water, ▶series: 8 x 20s/10s, time: 30s}", `unknown key "series" in a pause`,
			"series belongs to an interval"},
		{"- {pause: water, time: 30s, for: ▶drink}", `for: "drink" is not one of water, weights, floor or rest`, "water?"},
	})
	checkCases(t, func(s string) string { return "onphrase: 1\nclass: x\n" + s + "\nparts:\n" + goodPart }, []badCase{
		{"facing: ▶mirror", `facing: "mirror" is not one of front or class`, "class?"},
	})
}

// However rounds and repeats are nested, a class stays small.
func TestParseBoundsRounds(t *testing.T) {
	var b strings.Builder
	b.WriteString("onphrase: 1\nclass: x\nparts:\n  - part: One\n    tracks: [a.mp3]\n    rounds: 20\n    do:\n      - {superset: S0, rounds: 20, do: [{pause: water, time: 30s}]}\n")
	for i := range 6 {
		fmt.Fprintf(&b, "      - {superset: S%d, rounds: 20, do: [{repeat: S%d}]}\n", i+1, i)
	}
	c, problems := plan.Parse("class.yaml", []byte(b.String()))
	if len(problems) == 0 || problems[0].Msg != "with this the class comes to more than 1500 items" {
		t.Errorf("problems: %s", listProblems(problems))
	}
	if n := len(c.Parts[0].Items); n > 1500 {
		t.Errorf("%d items", n)
	}
}

func TestPauseFor(t *testing.T) {
	for name, want := range map[string]plan.PauseKind{
		"water": plan.Water, "drinks": plan.Water, "change of weights": plan.Weights, "bar down and find space": plan.Weights,
		"down to the floor": plan.Floor, "mats": plan.Floor, "walk it off": plan.Rest, "barre": plan.Rest,
	} {
		c := parseClean(t, []byte(inItem("- {pause: "+name+", time: 30s}")))
		if got := c.Parts[0].Items[0].Work.(plan.Pause).Kind; got != want {
			t.Errorf("%s is for %s, want %s", name, got, want)
		}
	}
	c := parseClean(t, []byte(inItem("- {pause: water, time: 30s, for: floor}")))
	if got := c.Parts[0].Items[0].Work.(plan.Pause).Kind; got != plan.Floor {
		t.Errorf("for: floor is read as %s", got)
	}
}
