package web

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/align"
)

// onPaper is a part on a song of 126 BPM in phrases of 32 counts as its sheet
// has it: time, what, dose and place in one line, the notes below it.
func onPaper(t *testing.T, head, items string) []string {
	t.Helper()
	m := mapOf(t, "onphrase: 1\nclass: Paper\nslot: \"9:00\"\n"+head+
		"parts:\n  - part: P\n    kind: strength\n    tracks: [tidewater.mp3]\n    do:\n"+items)
	var out []string
	for _, l := range linesOf(m.RowsOf(0)) {
		if l.Thin {
			continue // the lead-in
		}
		out = append(out, strings.Join([]string{l.Time, l.What, l.Dose, strings.Join(l.Where, ", ")}, " | "))
		for _, n := range l.Notes {
			out = append(out, "  "+n)
		}
	}
	return out
}

// What a substitute reads on the sheet is all that the class file says of an
// item: nothing of it is folded away.
func TestLines(t *testing.T) {
	const facing = "facing: class\n"
	for name, c := range map[string]struct {
		head, items string
		want        []string
	}{
		"a block that is built up": {items: `      - {block: A, build: add-on, sides: both, cue: big arms, moves: [{move: march, counts: 16}, {move: grapevine, counts: 16}]}`, want: []string{
			"0:00 | A | 2 stages, each once right, once left | phrase 1, 128 counts",
			"  stage 1, 0:00, phrase 1: 2 x (march 16)",
			"  stage 2, 0:31, phrase 3: march 16, grapevine 16",
			"  say: big arms"}},
		"layers": {items: `      - {block: B, build: layering, layers: [{move: march, add: arms overhead}], easier: no arms, moves: [{move: march, counts: 32}]}`, want: []string{
			"0:00 | B | 2 stages | phrase 1, 64 counts",
			"  stage 1, 0:00, phrase 1: march 32",
			"  stage 2, 0:15, phrase 2: march 32 with arms overhead",
			"  easier: no arms"}},
		"passes, each side by itself": {items: `      - {block: C, sides: both, times: 2, moves: [{move: march, counts: 32}]}`, want: []string{
			"0:00 | C | 2 times right, 2 times left, in turn | phrase 1, 128 counts", "  march 32"}},
		"passes without sides": {items: `      - {block: C, times: 3, moves: [{move: march, counts: 32}]}`, want: []string{
			"0:00 | C | 3 times | phrase 1, 96 counts", "  march 32"}},
		"pieces in their order": {items: `      - {set: biceps curl, reps: "8 x 2-2, 4 x 4-4, 8 x 2-2", weight: 2 x 6 kg}`,
			want: []string{
				"0:00 | biceps curl | 8 x 2-2, 4 x 4-4, 8 x 2-2, 2 x 6 kg | phrase 1, 96 counts"}},
		"rounds that are alike": {items: `      - {superset: X, rounds: 3, do: [{set: squat, reps: "8 x 2-2", weight: heavy, range: half, harder: pause}]}`, want: []string{
			"0:00 | squat | 3 rounds of 8 x 2-2, heavy, half range | phrase 1, 96 counts",
			"  X 1 to 3 of 3; 0:15 again, phrase 2; 0:31 again, phrase 3; harder: pause"}},
		"rounds of two items": {items: `      - {superset: X, rounds: 2, do: [{set: squat, reps: "8 x 2-2"}, {set: deadlift, reps: "8 x 2-2"}]}`, want: []string{
			"0:00 | squat | 8 x 2-2 | phrase 1, 32 counts", "  X 1 of 2",
			"0:15 | deadlift | 8 x 2-2 | phrase 2, 32 counts", "  X 1 of 2",
			"0:31 | squat | 8 x 2-2 | phrase 3, 32 counts", "  X 2 of 2",
			"0:46 | deadlift | 8 x 2-2 | phrase 4, 32 counts", "  X 2 of 2"}},
		"a side at a time": {head: facing, items: `      - {set: split squat, reps: "4 x 4-4, 8 x 2-2", sides: both}`,
			want: []string{
				"0:00 | split squat | each side 4 x 4-4, 8 x 2-2, right (you left) first | phrase 1, 128 counts"}},
		"her own side": {head: facing, items: `      - {block: C, sides: both, moves: [{move: march, counts: 32}]}`,
			want: []string{
				"0:00 | C | once right (you left), once left (you right) | phrase 1, 64 counts", "  march 32"}},
		"turns and where they begin": {items: `      - {interval: skater, series: 3 x 6 eights/2 eights, easier: low skater, cue: go}`, want: []string{
			"0:00 | skater | 3 x 22.9 s with 7.6 s rest | phrase 1, 192 counts",
			"  0:23 rest, phrase 2, count 17; 0:31 again, phrase 3; 0:54 rest, phrase 4, count 17; 1:01 again, phrase 5; 1:24 rest, phrase 6, count 17; say: go; easier: low skater"}},
		"a place within a phrase": {items: "      - {interval: march, time: 2 eights}\n      - {set: squat, reps: \"4 x 2-2\"}", want: []string{
			"0:00 | march | 7.6 s | phrase 1, 16 counts",
			"0:08 | squat | 4 x 2-2 | phrase 1, count 17, 16 counts"}},
	} {
		if diff := cmp.Diff(c.want, onPaper(t, c.head, c.items)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

// Turns that differ, and those that a change of song comes between, keep a line
// of their own, and say which they are.
func TestTurnsThatDiffer(t *testing.T) {
	turn := func(n int, seconds float64) []align.Row {
		rounds := []align.Round{{Of: "skater", Round: n, Rounds: 3, Series: true}}
		return []align.Row{
			{Kind: align.IntervalRow, Item: "skater", Line: 7, Seconds: seconds, Rounds: rounds},
			{Kind: align.PauseRow, Item: "rest", Line: 7, Seconds: 10, Rounds: rounds},
		}
	}
	rows := append(append(turn(1, 20), turn(2, 21)...), turn(3, 21)...)
	rows = append(rows[:5:5], align.Row{Kind: align.ChangeRow, Item: "change to Tidewater"}, rows[5])
	var got []string
	for _, l := range linesOf(rows) {
		got = append(got, strings.Join(append([]string{l.What, l.Dose}, l.Notes...), " | "))
	}
	want := []string{
		"skater | 20 s with 10 s rest | turn 1 of 3", "skater | 21 s with 10 s rest | turn 2 of 3",
		"skater | 21 s | turn 3 of 3",
		"change to Tidewater | ", "rest | 10 s | turn 3 of 3",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Stages that are not danced equally often say so one by one.
func TestStagesCutShort(t *testing.T) {
	pass := func(stage, pass int, side string) align.Row {
		return align.Row{Kind: align.BlockRow, Item: "A", Line: 3, Stage: stage, Stages: 2, Pass: pass, Passes: 4, Side: side,
			Moves: []align.Step{{Move: "march", Counts: 32}}}
	}
	l := linesOf([]align.Row{pass(1, 2, "left"), pass(2, 3, "right"), pass(2, 4, "left")})
	want := []line{{Time: "?", What: "A", Dose: "2 stages",
		Notes: []string{"stage 1, left: march 32", "stage 2, once right, once left: march 32", "pass 2 to 4 of 4"}}}
	if diff := cmp.Diff(want, l); diff != "" {
		t.Error(diff)
	}
}
