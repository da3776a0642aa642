package plan_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

// What a user's file names is hers, the rest stays as it was.
func TestParseCatalogLaysOwnFiguresOver(t *testing.T) {
	base := plan.Builtin()
	c, problems := plan.ParseCatalog("moves.yaml", []byte(`onphrase: 1
limits:
  - {class: squat, fine: 0.9s, too fast: 0.6s, source: my physiotherapist}
  - {class: sled, fine: 2s, too fast: 1s}
bands:
  - {kind: strength, inside: 112-120}
  - {kind: core, inside: 90-125, outer: 80-140, source: my studio}
  - {kind: stretch, inside: up to 90}
needs:
  - {for: weights, time: 12s}
moves:
  - {name: sled push, class: sled, pattern: push}
`), base)
	if len(problems) > 0 {
		t.Fatal(listProblems(problems))
	}
	squat := plan.Limit{Class: "squat", Path: 0.40, Fine: 0.9, TooFast: 0.6, Evidence: plan.Own,
		Source: "my physiotherapist", Down: base.Limits["squat"].Down, Up: base.Limits["squat"].Up}
	sled := plan.Limit{Class: "sled", Fine: 2, TooFast: 1, Evidence: plan.Own, Source: "set by yourself"}
	if diff := cmp.Diff([]plan.Limit{squat, sled, base.Limits["hinge"]},
		[]plan.Limit{c.Limits["squat"], c.Limits["sled"], c.Limits["hinge"]}); diff != "" {
		t.Errorf("limits (-want +got):\n%s", diff)
	}
	bands := []plan.Band{
		{Kind: plan.Strength, Inside: plan.TempoRange{Low: 112, High: 120}, Outer: plan.TempoRange{Low: 100, High: 132},
			Source: "set by yourself"},
		{Kind: plan.Core, Inside: plan.TempoRange{Low: 90, High: 125}, Outer: plan.TempoRange{Low: 80, High: 140},
			Source: "my studio"},
		{Kind: plan.Stretch, Inside: plan.TempoRange{High: 90}, Outer: plan.TempoRange{High: 110}, Source: "set by yourself"},
		base.Bands[plan.WarmUp],
	}
	if diff := cmp.Diff(bands, []plan.Band{c.Bands[plan.Strength], c.Bands[plan.Core], c.Bands[plan.Stretch],
		c.Bands[plan.WarmUp]}); diff != "" {
		t.Errorf("bands (-want +got):\n%s", diff)
	}
	if n := c.Needs[plan.Weights]; n.Time.Seconds != 12 || c.Needs[plan.Floor] != base.Needs[plan.Floor] {
		t.Errorf("needs: %+v", c.Needs)
	}
	if m, ok := c.Find("sled pushes"); !ok || c.Limits[m.Class] != sled {
		t.Errorf("the new move is %+v", m)
	}
	if base.Limits["squat"].Fine != 0.8 || base.Bands[plan.Strength].Inside.Low != 122 ||
		base.Needs[plan.Weights].Time.Counts != 8 {
		t.Error("the built-in catalogue has changed")
	}
}

func TestParseCatalogRefusesBadFigures(t *testing.T) {
	for _, c := range []badCase{
		{"▶onphrase: 1\n", "a moves file has nothing in it", "moves, limits, bands or needs"},
		{"onphrase: 1\nbands: [{kind: core, inside: ▶fast}]", `inside: "fast" is no range of tempo`,
			"beats per minute, like 122-130 or up to 100"},
		{"onphrase: 1\nbands: [{kind: core, inside: ▶130-122}]", `inside: "130-122" runs backwards`, "122-130?"},
		{"onphrase: 1\nbands: [{kind: core, inside: ▶100-900}]", `inside: "100-900" is out of range`, "from 40 to 240"},
		{"onphrase: 1\nbands: [▶{kind: core, inside: 100-130, outer: 110-140}]",
			"the outer band 110-140 does not hold the inner one, 100-130", "outer is the wider one"},
		{"onphrase: 1\nbands: [{kind: ▶mixed, inside: 100-130}]",
			`kind: "mixed" is not one of warm-up, cardio, strength, core, cool-down or stretch`, ""},
		{"onphrase: 1\nbands: [{kind: core, inside: 100-130}, ▶{kind: core, inside: 100-120}]", "core has two bands",
			"keep one of them"},
		{"onphrase: 1\nbands: [▶{kind: core}]", "a band needs inside", "like inside: 122-130"},
		{"onphrase: 1\nneeds: [{for: ▶rest, time: 8s}]", `for: "rest" is not one of water, weights or floor`, ""},
		{"onphrase: 1\nneeds: [{for: floor, time: ▶8}]", `time: 8 has no unit`, "8s or 8 counts?"},
		{"onphrase: 1\nlimits: [{class: squat, ▶fast: 0.5s, fine: 0.8s, too fast: 0.5s}]", `unknown key "fast" in a limit`,
			"a limit may have class, path, fine, too fast, too slow, evidence, source, down, up or ballistic"},
		{"onphrase: 1\n▶parts: []", `unknown key "parts" in a moves file`,
			"a moves file may have onphrase, limits, bands, needs or moves"},
	} {
		src, want := cutMark(t, c.src)
		_, got := plan.ParseCatalog("moves.yaml", []byte(src), plan.Builtin())
		want.Msg, want.Hint = c.msg, c.hint
		if len(got) != 1 || got[0] != want {
			t.Errorf("source:\n%s\nwant %s\n got %s", src, want.In("class.yaml"), listProblems(got))
		}
	}
}

// Every kind of part and every change has its figures, with a source.
func TestCatalogHasBandsAndNeeds(t *testing.T) {
	c := plan.Builtin()
	for _, kind := range []plan.PartKind{plan.WarmUp, plan.Cardio, plan.Strength, plan.Core, plan.CoolDown, plan.Stretch} {
		if b := c.Bands[kind]; b.Inside.High == 0 || b.Outer.Low > b.Inside.Low || b.Outer.High < b.Inside.High ||
			b.Source == "" || b.Kind != kind {
			t.Errorf("band of %s: %+v", kind, b)
		}
	}
	for _, kind := range []plan.PauseKind{plan.Water, plan.Weights, plan.Floor} {
		if n := c.Needs[kind]; n.Time == (plan.Length{}) || n.Source == "" {
			t.Errorf("need for %s: %+v", kind, n)
		}
	}
}
