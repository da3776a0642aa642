package plan_test

import (
	"os"
	"testing"

	"onphrase/plan"
)

// FuzzParse: whatever the bytes, there is a class, and every problem names a
// place from 1:1 on, in the order of the file.
func FuzzParse(f *testing.F) {
	src, err := os.ReadFile("testdata/harbour.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(src)
	for _, s := range []string{
		"", "\ufeffonphrase: 1\r\n", "onphrase: 1\nparts:\n - <<: {a: b}\n   ? [x]\n   : 2", "a: &a [*a]", "\t", "- {",
		"---\n---\n", "? ? ? :",
		inItem(`- {set: squat, reps: "4 × 2–2, 8 x pulse", range: half, sides: both, weight: 6 kg}`),
		inItem("- {block: A, on: eight, times: 010, moves: [{move: march, counts: 20}]}"),
		inItem("- {interval: jack, time: 8 x 20s/10s, setup: 16 counts}"),
		inItem("- {interval: jack, series: 8 x 20s/10s, setup: 16 counts}"),
		inPart("    rounds: 3\n    do:\n      - {superset: S, rounds: 4, do: [{set: squat, reps: 8 x 2-2}]}\n      - {repeat: S}\n"),
		inItem("- {block: A, build: halving, sides: both, moves: [{move: march, counts: 32}]}"),
		inItem("- {block: A, build: add-on, hold: walk, moves: [{move: march, counts: 12}, {move: mambo, counts: 28}]}"),
		inItem("- {block: A, build: layering, layers: [{move: march, add: arms}], moves: [{move: march, counts: 32}]}"),
		"onphrase: 1\nlimits: [{class: squat, fine: 0.8s, too fast: 0.5s}]\nbands: [{kind: core, inside: 90-120}]\nneeds: [{for: floor, time: 9s}]\n",
		inPart("    start: 1:02.5\n    bpm: 126.5\n    taught: half\n    do: [{pause: water, time: 1m30s}]\n"),
		"onphrase: 1\nclass: x\nmoves: [{name: a, also: [b], class: squat, counts: 4, switches: true}]\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		c, problems := plan.Parse("class.yaml", src)
		if c == nil || c.Catalog == nil {
			t.Fatal("no class")
		}
		last := plan.Pos{Line: 1, Col: 1}
		for _, p := range problems {
			if p.Pos.Line < last.Line || p.Pos.Line == last.Line && p.Pos.Col < last.Col || p.Pos.Col < 1 {
				t.Fatalf("%s after %d:%d", p.In("class.yaml"), last.Line, last.Col)
			}
			if p.Msg == "" {
				t.Fatalf("problem without words at %v", p.Pos)
			}
			last = p.Pos
		}
		if len(problems) == 0 {
			checkSense(t, c)
		}
		c.MissingTracks([]string{"a.mp3"})
		plan.ParseCatalog("moves.yaml", src, plan.Builtin())
	})
}

// checkSense holds a class that has no problems to what the others rely on.
func checkSense(t *testing.T, c *plan.Class) {
	t.Helper()
	if c.Name == "" || len(c.Parts) == 0 {
		t.Fatal("a class without name or parts passed")
	}
	for _, p := range c.Parts {
		if p.Name == "" || p.Kind == "" || len(p.Tracks) == 0 || len(p.Items) == 0 {
			t.Fatalf("an incomplete part passed: %+v", p)
		}
		for _, it := range p.Items {
			if it.Name == "" {
				t.Fatalf("an item without a name passed: %+v", it)
			}
			checkWork(t, c, it)
		}
	}
}

func checkWork(t *testing.T, c *plan.Class, it plan.Item) {
	t.Helper()
	switch w := it.Work.(type) {
	case plan.Block:
		if w.Times < 1 || w.Counts() < 1 || it.On == plan.OnDefault && w.Counts()%32 != 0 {
			t.Fatalf("block %s of %d counts passed", it.Name, w.Counts())
		}
	case plan.Set:
		if _, known := c.Catalog.Find(w.Move); !known || w.Counts() < 1 {
			t.Fatalf("set %s of %d counts passed", w.Move, w.Counts())
		}
	case plan.Interval:
		checkLength(t, w.Time)
	case plan.Pause:
		checkLength(t, w.Time)
	default:
		t.Fatalf("an item of no kind passed: %+v", it)
	}
}

func checkLength(t *testing.T, l plan.Length) {
	t.Helper()
	if (l.Counts > 0) == (l.Seconds > 0) {
		t.Fatalf("length %+v passed", l)
	}
}

// FuzzParseRhythm: what is read can be written and read again.
func FuzzParseRhythm(f *testing.F) {
	for _, s := range []string{"2-2", "2–1–2–1", "pulse", "singles", "2-count", "0-0", "16-0-16-16"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := plan.ParseRhythm(s)
		if err != nil {
			return
		}
		again, err := plan.ParseRhythm(r.String())
		if err != nil || again != r {
			t.Errorf("%q reads as %v, which reads as %v (%v)", s, r, again, err)
		}
	})
}
