package align

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

// E10: 20 s of work and 10 s of rest at 128 BPM (the protocol of
// PMC7311977): 42.67 counts become 40 = 18.750 s, 21.33 become 24 = 11.250 s,
// a turn is 64 counts = 30.000 s, and eight turns are 512 counts, 16 phrases,
// 240.000 s.
func TestSeries(t *testing.T) {
	m := Build(onePart(t, "", `{interval: jumping jack, series: 8 x 20s/10s}`),
		songs(song{file: "a.mp3", bpm: 128, duration: 300}))
	rows := work(m)
	if len(rows) != 16 {
		t.Fatalf("%d rows", len(rows))
	}
	for i, r := range rows {
		counts, seconds, at := 40, 18.750, float64(i/2)*30
		if i%2 == 1 {
			counts, seconds, at = 24, 11.250, at+18.750
		}
		if r.Counts != counts {
			t.Errorf("row %d: %d counts", r.Row, r.Counts)
		}
		near(t, "seconds", r.Seconds, seconds, thousandth)
		near(t, "start", r.ClassTime, at, thousandth)
		if want := (Round{"jumping jack", i/2 + 1, 8, true}); len(r.Rounds) != 1 || r.Rounds[0] != want {
			t.Errorf("row %d: rounds %v", r.Row, r.Rounds)
		}
	}
	near(t, "length", m.Length, 240, thousandth)
	if r := rows[15]; r.Phrase != 16 {
		t.Errorf("it ends in phrase %d", r.Phrase)
	}
}

// E18 written as a superset: four times 32 counts at 126 are 60.952 s, three
// rounds 182.857 s.
func TestSupersetOfRounds(t *testing.T) {
	m := Build(onePart(t, "", `{superset: All, rounds: 3, do: [{set: squat, reps: 16 x 1-1}, {set: overhead press, reps: 8 x 2-2}, {set: bent-over row, reps: 16 x 1-1}, {set: biceps curl, reps: 4 x 4-4}]}`),
		songs(song{file: "a.mp3", bpm: 126, duration: 240}))
	rows := work(m)
	if len(rows) != 12 || rows[4].Rounds[0] != (Round{"All", 2, 3, false}) {
		t.Fatalf("%d rows, rounds %v", len(rows), rows[4].Rounds)
	}
	near(t, "a round", rows[3].ClassTime+rows[3].Seconds, 60.952, thousandth)
	near(t, "three rounds", m.Length, 182.857, thousandth)
	f := found(t, m, "rhythm-too-fast") // said once for all rounds
	if m.Rows[f.Row-1].Item != "squat" || len(f.Also) != 2 {
		t.Errorf("%s, also in rows %v", f.Message, f.Also)
	}
}

// What a repeat repeats is one cause, so one finding.
func TestRepeatIsOneFinding(t *testing.T) {
	m := Build(classOf(t, `  - part: One
    tracks: [a.mp3]
    do:
      - {set: squat, reps: 16 x 1-1}
      - {set: lunge, reps: 8 x 2-2}
      - {repeat: squat}
      - {repeat: squat}
`), songs(song{file: "a.mp3", bpm: 126, duration: 240}))
	if f := found(t, m, "rhythm-too-fast"); f.Line != 7 || len(f.Also) != 2 {
		t.Errorf("line %d, also in rows %v", f.Line, f.Also)
	}
}

// E17 as a block that is built up: each stage on a phrase of its own, 128
// counts, 58.182 s at 132.
func TestTaperOnPhrases(t *testing.T) {
	m := Build(onePart(t, "", `{block: A, build: halving, moves: [{move: march, counts: 16}, {move: step touch, counts: 16}]}`), songs(song{file: "a.mp3", bpm: 132, duration: 240}))
	for i, r := range work(m) {
		if r.Phrase != i+1 || r.Count != 1 || r.Counts != 32 || r.Stage != i+1 || r.Stages != 4 || len(r.Moves) != 2<<i {
			t.Errorf("row %d: phrase %d count %d, %d counts, stage %d of %d, %d moves", r.Row, r.Phrase, r.Count, r.Counts,
				r.Stage, r.Stages, len(r.Moves))
		}
	}
	near(t, "seconds", m.Length, 58.182, thousandth)
}

// Two passes of 16 counts share a phrase; a pass never waits in the middle of
// one.
func TestShortPassesShareAPhrase(t *testing.T) {
	m := Build(onePart(t, "", `{block: A, sides: both, times: 2, moves: [{move: march, counts: 16}]}`),
		songs(song{file: "a.mp3", bpm: 128, duration: 240}))
	var got []string
	for _, r := range m.Rows {
		got = append(got, fmt.Sprintf("%s %d/%d", r.Side, r.Phrase, r.Count))
	}
	if diff := cmp.Diff([]string{"right 1/1", "left 1/17", "right 2/1", "left 2/17"}, got); diff != "" {
		t.Error(diff)
	}
}

// An interval with both sides is done on each.
func TestIntervalSides(t *testing.T) {
	m := Build(onePart(t, "", `{interval: side plank, time: 30s, sides: both}`),
		songs(song{file: "a.mp3", bpm: 128, duration: 240}))
	rows := work(m)
	if len(rows) != 2 || rows[0].Side != "right" || rows[1].Side != "left" || rows[1].Counts != 64 {
		t.Errorf("rows: %+v", rows)
	}
}

// Totals worked out by hand: 4 x 4-4 + 8 x 2-2 are 12 hinges in 64 counts, 30 s
// at 128; the rest of a rhythm is not under load.
func TestTotals(t *testing.T) {
	m := Build(onePart(t, "rounds: 2", `{set: deadlift, reps: "4 x 4-4, 8 x 2-2", weight: heavy}`,
		`{set: good-morning, reps: 8 x 2-0-2-4}`, `{set: one-arm row, reps: 8 x 2-2, sides: both, weight: 8 kg}`),
		songs(song{file: "a.mp3", bpm: 128, duration: 300}))
	s := m.Summary
	hinge := Total{Name: "hinge", Reps: 40, Seconds: 2 * (30 + 15)}
	pull := Total{Name: "pull", Reps: 32, Right: 16, Left: 16, Seconds: 4 * 15}
	if diff := cmp.Diff([]Total{hinge, pull}, s.Patterns); diff != "" {
		t.Errorf("patterns (-want +got):\n%s", diff)
	}
	heavy, eight := Total{Name: "heavy", Reps: 24, Seconds: 60},
		Total{Name: "8 kg", Reps: 32, Right: 16, Left: 16, Seconds: 60}
	if diff := cmp.Diff([]Total{heavy, eight}, s.Weights); diff != "" {
		t.Errorf("weights (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff([]Kit{{"barbell", []string{"heavy"}}, {"dumbbells", []string{"8 kg"}}}, s.Kit); diff != "" {
		t.Errorf("kit (-want +got):\n%s", diff)
	}
	var soFar []int
	for _, r := range work(m) {
		if r.Pattern == "hinge" {
			soFar = append(soFar, r.SoFar)
			if r.OfAll != 40 {
				t.Errorf("row %d: of %d", r.Row, r.OfAll)
			}
		}
	}
	if diff := cmp.Diff([]int{4, 12, 20, 24, 32, 40}, soFar); diff != "" {
		t.Errorf("running total (-want +got):\n%s", diff)
	}
}

// Shares of the class by kind of part.
func TestShares(t *testing.T) {
	m := Build(classOf(t, parts("W warm-up: "+minutes("1:00"), "A core: "+minutes("2:00"), "B core: "+minutes("2:00"))),
		songs(song{file: "a.mp3", bpm: 128, duration: 300}))
	if diff := cmp.Diff([]Share{{"warm-up", 60, 0.2}, {"core", 240, 0.8}}, m.Summary.Shares); diff != "" {
		t.Error(diff)
	}
}

// Timed work is called out at half time, with 10 s to go, and 4, 3, 2 before
// its last count.
func TestMarks(t *testing.T) {
	for _, on := range []string{"eight", "clock"} {
		m := Build(onePart(t, "", `{interval: jab, time: 60s, on: `+on+`}`),
			songs(song{file: "a.mp3", bpm: 120, one: 4, duration: 240}))
		want := []Mark{{34, "half"}, {54, "10 s"}, {62, "4"}, {62.5, "3"}, {63, "2"}}
		if diff := cmp.Diff(want, m.Rows[1].Marks); diff != "" {
			t.Errorf("on %s:\n%s", on, diff)
		}
		if m.Rows[1].ByClock != (on == "clock") {
			t.Errorf("on %s: by the clock %v", on, m.Rows[1].ByClock)
		}
	}
	m := Build(onePart(t, "", `{interval: jab, time: 4 counts}`, squats),
		songs(song{file: "a.mp3", bpm: 120, duration: 240}))
	if len(m.Rows[0].Marks)+len(m.Rows[1].Marks) > 0 {
		t.Error("four counts, or a set, are called out")
	}
}

// An instructor who faces the class moves to the other side.
func TestFacing(t *testing.T) {
	c := onePart(t, "", `{set: one-arm row, reps: 8 x 2-2, sides: both}`)
	for facing, want := range map[plan.Facing]string{plan.FacingFront: "", plan.FacingClass: "left"} {
		c.Facing = facing
		m := Build(c, songs(song{file: "a.mp3", bpm: 120, duration: 240}))
		if m.Rows[0].Side != "right" || m.Rows[0].Mirror != want || m.Facing != string(facing) {
			t.Errorf("facing %q: side %s, mirror %q", facing, m.Rows[0].Side, m.Rows[0].Mirror)
		}
	}
}

// A user's own figures decide: limits, bands and needs.
func TestOwnFigures(t *testing.T) {
	own, problems := ownCatalog(`limits: [{class: squat, fine: 1.2s, too fast: 1.0s}]
bands: [{kind: strength, inside: 110-118}]
needs: [{for: weights, time: 10s}]
`)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	c := onePart(t, "kind: strength", `{set: squat, reps: 8 x 2-2, weight: heavy}`,
		`{set: squat, reps: 8 x 2-2, weight: light}`)
	c.Catalog = own
	m := Build(c, songs(song{file: "a.mp3", bpm: 128, duration: 240}))
	for code, want := range map[string]struct {
		figure string
		value  float64
		source string
	}{
		"rhythm-too-fast":    {"limit_fine_seconds", 1.2, "set by yourself (own figures)"},
		"tempo-outside-band": {"band_high_bpm", 118, "set by yourself"},
		"change-too-short":   {"counts_needed", 24, "set by yourself"}, // 10 s are 21.3 counts
	} {
		f := found(t, m, code)
		if f.Source != want.source || math.Abs(f.Figures[want.figure]-want.value) > 1e-9 {
			t.Errorf("%s: %s %v, source %s", code, want.figure, f.Figures[want.figure], f.Source)
		}
	}
}
