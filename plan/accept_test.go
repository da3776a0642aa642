package plan_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

func TestParseReadsLengths(t *testing.T) {
	for in, want := range map[string]plan.Length{
		"30s": {Seconds: 30}, "30 s": {Seconds: 30}, "30 sec": {Seconds: 30}, "30 Seconds": {Seconds: 30},
		"7.5s": {Seconds: 7.5},
		"0:30": {Seconds: 30}, "1:02.5": {Seconds: 62.5}, "1m30s": {Seconds: 90}, "1 min 30 sec": {Seconds: 90},
		"2 min": {Seconds: 120}, "1m": {Seconds: 60},
		"64 counts": {Counts: 64}, "1 count": {Counts: 1}, "010 counts": {Counts: 10}, "4 eights": {Counts: 32},
		"4 8-counts": {Counts: 32}, "“45s”": {Seconds: 45},
	} {
		c := parseClean(t, []byte(inItem("- {pause: water, time: "+in+", setup: "+in+"}")))
		it := c.Parts[0].Items[0]
		if got := it.Work.(plan.Pause).Time; got != want || it.Setup != want {
			t.Errorf("%s reads as %+v, want %+v", in, got, want)
		}
	}
}

func TestParseReadsTypographicSigns(t *testing.T) {
	for _, reps := range []string{`"4 x 2-2, 16 x 1-1"`, `"4 × 2–2, 16 × 1–1"`, `“4 x 2-2, 16 x 1-1”`, `'4X2-2,16X1-1'`,
		`4x2—2, 16 singles`} {
		c := parseClean(t, []byte(inPart("    do:\n      - set: “squat”\n        reps: "+reps+"\n")))
		want := plan.Set{Move: "squat", Reps: []plan.Reps{{N: 4, Rhythm: twoTwo}, {N: 16, Rhythm: oneOne}},
			Range: plan.FullRange}
		if diff := cmp.Diff(plan.Work(want), c.Parts[0].Items[0].Work); diff != "" {
			t.Errorf("%s (-want +got):\n%s", reps, diff)
		}
	}
}

func TestParseReadsEveryKey(t *testing.T) {
	c := parseClean(t, []byte(inPart(`    kind: Cool-Down
    start: 1:02.5
    bpm: 126.5
    taught: half
    do:
      - interval: skaters
        time: 64 counts
        on: phrase
        cue: |
          low first,
          then jump
        setup: 10s
        easier: "step: no jump"
        harder: touch the floor
`)))
	second := 62.5
	want := plan.Part{
		Pos: plan.Pos{Line: 4, Col: 5}, Name: "Round 1", Kind: plan.CoolDown,
		Tracks: []plan.TrackRef{{Pos: plan.Pos{Line: 5, Col: 14}, File: "ferry.mp3"}},
		Start:  plan.Start{Pos: plan.Pos{Line: 7, Col: 12}, Time: &second},
		BPM:    126.5, Taught: plan.Half,
		Items: []plan.Item{{
			Pos: plan.Pos{Line: 11, Col: 9}, Name: "skaters", On: plan.OnPhrase, Cue: "low first, then jump",
			Setup: plan.Length{Seconds: 10}, Easier: "step: no jump", Harder: "touch the floor",
			Work: plan.Interval{Move: "skaters", Time: plan.Length{Counts: 64}},
		}},
	}
	if diff := cmp.Diff(want, c.Parts[0]); diff != "" {
		t.Errorf("part differs (-want +got):\n%s", diff)
	}
	for in, want := range map[string]plan.Start{"phrase 2": {Phrase: 2}, "Count 017": {Count: 17}} {
		got := parseClean(t, []byte(inPart("    start: "+in+"\n    do: [{pause: water, time: 30s}]\n"))).Parts[0].Start
		want.Pos = plan.Pos{Line: 6, Col: 12}
		if got != want {
			t.Errorf("start: %s reads as %+v", in, got)
		}
	}
}

// Files come from any editor: with a byte order mark, with CRLF or CR line
// ends, with YAML's own first and last line. Places stay the same.
func TestParseReadsFilesOfAnyEditor(t *testing.T) {
	src, err := os.ReadFile("testdata/harbour.yaml")
	if err != nil {
		t.Fatal(err)
	}
	want := parseClean(t, src)
	for name, s := range map[string]string{
		"byte order mark": "\ufeff" + string(src),
		"CRLF":            strings.ReplaceAll(string(src), "\n", "\r\n"),
		"CR":              strings.ReplaceAll(string(src), "\n", "\r"),
		"end line":        string(src) + "...\n",
		"no last newline": strings.TrimSuffix(string(src), "\n"),
	} {
		got := parseClean(t, []byte(s))
		if diff := cmp.Diff(want.Parts, got.Parts); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

func TestParseReadsOwnMoves(t *testing.T) {
	const moves = `moves:
  - {name: Crab Reach, also: [side crab], class: press, pattern: push, counts: 4, switches: yes, impact: low, equipment: [mat, band]}
  - name: Pier Hop
`
	want := []plan.Move{
		{Name: "Crab Reach", Also: []string{"side crab"}, Class: "press", Pattern: "push", Counts: 4, Switches: true,
			Impact: plan.LowImpact, Equipment: []string{"mat", "band"}},
		{Name: "Pier Hop", Impact: plan.NoImpact},
	}
	own, problems := plan.ParseCatalog("moves.yaml", []byte("onphrase: 1\n"+moves), plan.Builtin())
	got := own.Moves[len(plan.Builtin().Moves):]
	if diff := cmp.Diff(want, got); diff != "" || len(problems) > 0 {
		t.Errorf("%v (-want +got):\n%s", problems, diff)
	}
	c := parseClean(t, []byte("onphrase: 1\nclass: Harbour\n"+moves+`parts:
  - part: Core
    tracks: [a.mp3]
    do:
      - {set: crab reaches, reps: 8 x 2-2}
      - {interval: side crab, time: 30s}
      - {block: A, moves: [{move: pier hop, counts: 32}]}
`))
	if m, ok := c.Catalog.Find("side-crab"); !ok || m.Name != "Crab Reach" {
		t.Errorf("the class's catalogue has %+v", m)
	}
}

func TestParseWithKnownMoves(t *testing.T) {
	src := []byte(inItem("- {set: pier hops, reps: 8 x 2-2}"))
	if _, problems := plan.Parse("class.yaml", src); len(problems) != 1 {
		t.Errorf("without the move: %s", listProblems(problems))
	}
	known := plan.Builtin().With([]plan.Move{{Name: "Pier Hop", Class: "squat"}})
	if c, problems := plan.ParseWith("class.yaml", src, known); len(problems) != 0 || c.Catalog != known {
		t.Errorf("with the move: %s", listProblems(problems))
	}
}

// All problems of a file come at once, in the order of the file, and the rest
// of the class is read.
func TestParseReportsAllProblemsAtOnce(t *testing.T) {
	const src = `onphrase: 1
class: Harbour
slot: 45
parts:
  - part: Warm-up
    kind: warmup
    track: a.mp3
    do:
      - {block: A, moves: [{move: march, counts: 24}, {move: grapvine, counts: 4}]}
      - {pause: water, time: 30}
  - part: Round 1
    tracks: [b.mp3]
    do:
      - {set: squat, reps: "8 x 2-count"}
      - {set: deadlift, reps: "8 x 4-4"}
`
	c, problems := plan.Parse("class.yaml", []byte(src))
	var places []plan.Pos
	for _, p := range problems {
		places = append(places, p.Pos)
	}
	want := []plan.Pos{{Line: 3, Col: 7}, {Line: 5, Col: 5}, {Line: 6, Col: 11}, {Line: 7, Col: 5}, {Line: 9, Col: 9},
		{Line: 9, Col: 62}, {Line: 10, Col: 30}, {Line: 14, Col: 33}}
	if diff := cmp.Diff(want, places); diff != "" {
		t.Errorf("places (-want +got):\n%s\n%s", diff, listProblems(problems))
	}
	if len(c.Parts) != 2 || len(c.Parts[1].Items) != 2 || c.Parts[1].Items[1].Work.(plan.Set).Counts() != 64 {
		t.Errorf("the rest of the class was not read: %+v", c)
	}
}

// Where the YAML itself breaks, what stands above is read and checked, and
// nothing is said of what the break has cut short.
func TestParseReadsAboveABreak(t *testing.T) {
	const head = `onphrase: 1
class: Harbour
parts:
  - part: Warm-up
    kind: warmup
    tracks: [a.mp3]
    do:
      - {pause: water, time: 30s}
      - block: A
        moves:
          - {move: march, counts: 8}
`
	warmup := plan.Pos{Line: 5, Col: 11}
	for name, c := range map[string]struct {
		rest string
		want []plan.Pos
	}{
		"in a block": {"          - {move: march, counts: 8\n      - {pause: water, time: 3s}\n",
			[]plan.Pos{warmup, {Line: 12, Col: 13}}},
		"in a part": {"  - part: Core\n    tracks:\n    \t- b.mp3\n",
			[]plan.Pos{warmup, {Line: 9, Col: 9}, {Line: 14, Col: 5}}},
		"moves come below": {"        x: {\nmoves:\n  - {name: x}\n", []plan.Pos{{Line: 12, Col: 12}}},
	} {
		class, problems := plan.Parse("class.yaml", []byte(head+c.rest))
		var places []plan.Pos
		for _, p := range problems {
			places = append(places, p.Pos)
		}
		if diff := cmp.Diff(c.want, places); diff != "" {
			t.Errorf("%s (-want +got):\n%s\n%s", name, diff, listProblems(problems))
		}
		if len(c.want) > 1 && (class.Name != "Harbour" || len(class.Parts[0].Items) != 2) {
			t.Errorf("%s: the class above was not read: %+v", name, class)
		}
	}
}
