package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"onphrase/plan"
)

// mark stands in a source right before the place a problem must name.
const mark = "▶"

// badCase is a bad piece of a class file and the one problem it must give.
type badCase struct{ src, msg, hint string }

// inItem puts an item's line into a class file.
func inItem(item string) string { return inPart("    do:\n      " + item + "\n") }

// inPart puts lines of a part into a class file.
func inPart(rest string) string {
	return inClass("  - part: Round 1\n    tracks: [ferry.mp3]\n" + rest)
}

// inClass puts parts into a class file.
func inClass(parts string) string { return "onphrase: 1\nclass: Harbour\nparts:\n" + parts }

const goodPart = "  - part: Core\n    tracks: [a.mp3]\n    do: [{pause: water, time: 30s}]\n"

// checkCases parses every case in its frame and wants exactly its problem,
// exactly at the mark.
func checkCases(t *testing.T, frame func(string) string, cases []badCase) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.msg, func(t *testing.T) {
			src, want := cutMark(t, frame(c.src))
			_, got := plan.Parse("class.yaml", []byte(src))
			want.Msg, want.Hint = c.msg, c.hint
			if len(got) != 1 || got[0] != want {
				t.Errorf("source:\n%s\nwant %s\n got %s", src, want.In("class.yaml"), listProblems(got))
			}
		})
	}
}

// cutMark takes the mark out of a source and returns its place.
func cutMark(t *testing.T, src string) (string, plan.Problem) {
	t.Helper()
	before, after, ok := strings.Cut(src, mark)
	if !ok {
		t.Fatalf("no mark in:\n%s", src)
	}
	lines := strings.Split(before, "\n")
	last := lines[len(lines)-1]
	return before + after, plan.Problem{Pos: plan.Pos{Line: len(lines), Col: len([]rune(last)) + 1}}
}

func listProblems(all []plan.Problem) string {
	var b strings.Builder
	for _, p := range all {
		fmt.Fprintln(&b, p.In("class.yaml"))
	}
	return b.String()
}

func TestParseRefusesBadLengths(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{"- {pause: water, time: ▶30}", "time: 30 has no unit", "30s or 30 counts?"},
		{"- {pause: water, time: ▶2 phrases}", `time: "2 phrases": phrase has two meanings`,
			"64 counts (of 32) or 16 counts (of 8)?"},
		{"- {pause: water, time: ▶16 beats}", `time: "16 beats" is no length`, "16 counts?"},
		{"- {pause: water, time: ▶4 bars}", `time: "4 bars" is no length`, "16 counts (of 4 to a bar)?"},
		{"- {pause: water, time: ▶-30s}", `time: "-30s" is less than nothing`, "30s"},
		{"- {pause: water, time: ▶0s}", `time: "0s" is out of range`, "more than 0s, at most 60:00"},
		{"- {pause: water, time: ▶0 counts}", `time: "0 counts" is out of range`, "from 1 to 4096 counts"},
		{"- {pause: water, time: ▶99999 counts}", `time: "99999 counts" is out of range`, "from 1 to 4096 counts"},
		{"- {pause: water, time: ▶9000s}", `time: "9000s" is out of range`, "more than 0s, at most 60:00"},
		{"- {pause: water, time: ▶1:75}", `time: "1:75" has more than 59 seconds`, "2:15?"},
		{`- {pause: water, time: "▶7,5s"}`, `time: "7,5s" is no length`, "7.5s? The decimal sign is a point"},
		{"- {interval: jack, time: ▶8 x 20s/10s}", `time: "8 x 20s/10s" is a series, not one length`,
			"one length like 20s; an interval may have a series: 8 x 20s/10s"},
		{"- {pause: water, time: ▶a while}", `time: "a while" is no length`,
			"seconds like 30s, minutes and seconds like 1:30, or counts like 64 counts"},
		{"- {pause: water, time: ▶[30s]}", "time is one value, not a list", `time: "30s"`},
		{"- {pause: water, ▶time: }", "time has no value", "write one, or remove the line"},
		{"- ▶{pause: water}", "a pause needs time", "like time: 30s"},
		{"- {pause: water, time: 30s, setup: ▶16}", "setup: 16 has no unit", "16s or 16 counts?"},
	})
}

func TestParseRefusesBadReps(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{`- {set: squat, reps: "8 x ▶2-count"}`, `reps: "2-count" has two meanings`,
			"2-2 (2 down 2 up, 4 counts a rep) or 1-1 (1 down 1 up, 2 counts a rep)?"},
		{`- {set: squat, reps: "8 x ▶two-count"}`, `reps: "two-count" has two meanings`,
			"2-2 (2 down 2 up, 4 counts a rep) or 1-1 (1 down 1 up, 2 counts a rep)?"},
		{`- {set: squat, reps: "8 x ▶4 counts"}`, `reps: "4 counts" has two meanings`,
			"4-4 (4 down 4 up, 8 counts a rep) or 2-2 (2 down 2 up, 4 counts a rep)?"},
		{`- {set: squat, reps: "8 x ▶3"}`, `reps: "3" has two meanings`,
			"3-3 (3 down 3 up, 6 counts a rep) or 2-1 (2 down 1 up, 3 counts a rep)?"},
		{`- {set: squat, reps: "8 x ▶doubles"}`, `reps: "doubles" has two meanings`,
			"2-2 (2 down 2 up, 4 counts a rep), or 1-1 twice on one side?"},
		{`- {set: squat, reps: "4 x 2-2, 8 x ▶slow"}`, `reps: "slow" is no rhythm`, `digits say it: "4 x 2-2, 8 x 4-4"?`},
		{`- {set: squat, reps: "4 × 2–2, 8 × ▶2/2"}`, `reps: "2/2" is no rhythm`, "2-2?"},
		{`- {set: squat, reps: 8 x ▶2-1-2}`, `reps: "2-1-2" has three figures`,
			"down-hold-up-hold has four: 2-1-2-0, or 2-0-1-2?"},
		{`- {set: squat, reps: 8 x ▶1-1-1-1-1}`, `reps: "1-1-1-1-1" has too many figures`,
			"two (down-up) or four (down-hold-up-hold)"},
		{`- {set: squat, reps: 8 x ▶0-2}`, `reps: "0-2" has no count for one of the ways`,
			"down and up take at least 1 count each; pulse takes 1 for both"},
		{`- {set: squat, reps: 8 x ▶2-64}`, `reps: "2-64" has a phase of 64 counts`, "at most 16 counts one way"},
		{`- {set: squat, reps: ▶8}`, `reps: 8 has no rhythm`, "8 x 2-2 (2 down 2 up) or 8 x 1-1 (1 down 1 up)?"},
		{`- {set: squat, reps: ▶2-2}`, `reps: "2-2" has no number of repetitions`, "8 x 2-2?"},
		{`- {set: squat, reps: ▶2-2 x 8}`, `reps: "2-2 x 8" has the rhythm first`, "8 x 2-2?"},
		{`- {set: squat, reps: ▶8 reps 2-2}`, `reps: "8 reps 2-2" is no number of repetitions in a rhythm`, "8 x 2-2?"},
		{`- {set: squat, reps: ▶3 x 8 x 2-2}`, `reps: "3 x 8 x 2-2" repeats a set`,
			"24 x 2-2 in one go? Or rounds: 3 on a superset"},
		{`- {set: squat, reps: "4 x 2-2, ▶8 x 1-1 each side"}`, `reps: "8 x 1-1 each side" has words after the rhythm`,
			"8 x 1-1, and sides: both as a key of its own"},
		{`- {set: squat, reps: ▶4 x 2-2 + 8 x 1-1}`, `reps: "4 x 2-2 + 8 x 1-1" is no list`,
			`commas part the entries: "4 x 2-2, 8 x 1-1"`},
		{`- {set: squat, reps: "4 x 2-2,▶"}`, `reps: an entry is missing beside a comma`, `like "4 x 2-2, 16 x 1-1"`},
		{`- {set: squat, reps: ▶0 x 2-2}`, `reps: 0 repetitions is out of range`, "from 1 to 500"},
		{`- {set: squat, reps: ▶9000 x 2-2}`, `reps: 9000 repetitions is out of range`, "from 1 to 500"},
		{`- {set: squat, reps: ▶-8 x 2-2}`, `reps: "-8 x 2-2" is less than nothing`, "like 8 x 2-2"},
		{`- {set: squat, reps: ▶[4 x 2-2]}`, "reps is one value, not a list", `reps: "4 x 2-2"`},
		{`- {set: squat, reps: 4 x 2-2▶, 16 x 1-1}`, "the comma ends the text here",
			`text with a comma in it needs quotes: "4 x 2-2, 16 x 1-1"`},
		{`- ▶{set: squat}`, "a set needs reps", `like reps: "4 x 2-2, 16 x 1-1"`},
		{`- {set: squat, ▶rhythm: 2-2, reps: 8 x 2-2}`, `unknown key "rhythm" in a set`, "reps?"},
		{`- {set: squat, reps: 8 x 2-2, weight: ▶6}`, "weight: 6 has no unit", "6 kg? Or words, like heavy"},
		{`- {set: squat, reps: 8 x 2-2, range: ▶partial}`, `range: "partial" is not one of full or half`, "half?"},
		{`- {set: kettlebell swing, reps: 8 x 2-2, range: ▶half}`,
			`"kettlebell swing" has no half range: it is thrown, and goes as far as it goes`,
			"remove range; what helps is another rhythm or a lighter weight"},
		{`- {set: squat, reps: 8 x 2-2, sides: ▶each}`, `sides: "each" is not one of both, right or left`, "both?"},
		{`- {set: squat, reps: 8 x 2-2, on: ▶beat}`, `on: "beat" is not one of phrase, eight, count or clock`, "count?"},
		{`- {set: squat, reps: 8 x 2-2, on: ▶clock}`, "a set is counted to the music, not by the clock",
			"work by the clock is an interval: {interval: squat, time: 30s, on: clock}"},
	})
}
