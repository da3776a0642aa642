package plan_test

import (
	"math"
	"testing"

	"onphrase/plan"
)

// R = π²d/(2gT²) is 1 at T = π·√(d/2g): worked out by hand for the paths of
// the catalogue, with g of 9.80665 m/s².
func TestFloatsBelow(t *testing.T) {
	for class, want := range map[string]float64{
		"squat": 0.449, "hinge": 0.502, "press": 0.476, "row": 0.420, "raise": 0.688, "bridge": 0.355,
	} {
		l := plan.Builtin().Limits[class]
		if got := l.FloatsBelow(); math.Abs(got-want) > 0.0006 {
			t.Errorf("%s floats below %.4f s, want %.3f", class, got, want)
		}
		if r := l.PeakLoad(l.FloatsBelow()); math.Abs(r-1) > 1e-9 {
			t.Errorf("%s: R = %g where it floats", class, r)
		}
		if up := l.Up.Fine; up < l.FloatsBelow() || up > l.FloatsBelow()+0.011 {
			t.Errorf("%s: up alone is fine from %g s, floats below %.3f s", class, up, l.FloatsBelow())
		}
		if l.Down.Fine != l.TooFast {
			t.Errorf("%s: down alone is fine from %g s, both ways alike too fast below %g s", class, l.Down.Fine, l.TooFast)
		}
	}
	if l := plan.Builtin().Limits["swing"]; l.FloatsBelow() != 0 || !l.Ballistic {
		t.Errorf("a swing is thrown: %+v", l)
	}
	if half, full := plan.Builtin().Limits["bridge"].Path, plan.Builtin().Limits["hinge"].Path; half != full/2 {
		t.Errorf("a bridge goes %g m, a deadlift %g m", half, full)
	}
}

// A way is judged alone only beside one at least twice as long.
func TestWaysOfRhythm(t *testing.T) {
	l := plan.Builtin().Limits["squat"]
	type way struct {
		name                  string
		counts, fine, tooFast float64
	}
	for rhythm, want := range map[string][]way{
		"1-1":     {{"each way", 1, 0.80, 0.55}},
		"2-1-2-1": {{"each way", 2, 0.80, 0.55}},
		"3-1":     {{"down", 3, 0.80, 0.55}, {"up", 1, 0.45, 0}},
		"1-3":     {{"down", 1, 0.55, 0}, {"up", 3, 0.80, 0.55}},
		"2-1":     {{"down", 2, 0.80, 0.55}, {"up", 1, 0.45, 0}},
		"3-2":     {{"down", 3, 0.80, 0.55}, {"up", 2, 0.80, 0.55}},
		"pulse":   {{"each way", 0.5, 0.80, 0.55}},
	} {
		r, err := plan.ParseRhythm(rhythm)
		if err != nil {
			t.Fatal(err)
		}
		got := l.Ways(r)
		if len(got) != len(want) {
			t.Fatalf("%s has %d ways, want %d", rhythm, len(got), len(want))
		}
		for i, w := range got {
			if (way{w.Name, w.Counts, w.Fine, w.TooFast}) != want[i] {
				t.Errorf("%s: %+v, want %+v", rhythm, w, want[i])
			}
			if w.TooFast == 0 && w.Evidence != plan.CommonPractice {
				t.Errorf("%s %s rests on %s", rhythm, w.Name, w.Evidence)
			}
		}
	}
	own := plan.Limit{Fine: 2, TooFast: 1, Evidence: plan.Own}
	if w := own.Ways(plan.Rhythm{Down: 3, Up: 1})[1]; w.Fine != 2 || w.TooFast != 1 {
		t.Errorf("without a limit of its own a way has that of both: %+v", w)
	}
}

// Moves of one name family that differ in how far or how fast they go.
func TestClassesOfMovement(t *testing.T) {
	for name, want := range map[string]string{
		"sit-up": "sit-up", "back extension": "back extension", "crunch": "crunch", "bridge": "bridge",
		"hip thrust": "bridge",
		"push press": "drive", "clean and press": "drive", "deadlift": "hinge",
	} {
		if m, ok := plan.Builtin().Find(name); !ok || m.Class != want {
			t.Errorf("%s is of class %q, want %q", name, m.Class, want)
		}
	}
}

func TestLeastOfMoves(t *testing.T) {
	for name, want := range map[string]float64{ // seconds at 130 BPM
		"burpee": 8 * 60 / 130., "inchworm": 8 * 60 / 130., "jumping jack": 2 * 60 / 130., "rope skip": 60 / 130.,
		"hamstring stretch": 10, "squat": 0, "squat to press": 4 * 60 / 130.,
	} {
		m, _ := plan.Builtin().Find(name)
		if got := m.Least.At(130); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s takes at least %.3f s, want %.3f", name, got, want)
		}
	}
	// A stretch is held 10-30 s: ACSM's Guidelines, 11th ed., Table 5.6.
	if m, _ := plan.Builtin().Find("calf stretch"); m.Least.Evidence != plan.Published {
		t.Errorf("a stretch: %+v", m.Least)
	}
	src := "onphrase: 1\nmoves: [{name: sled push, least: 6 counts}]\n"
	c, problems := plan.ParseCatalog("moves.yaml", []byte(src), plan.Builtin())
	m, _ := c.Find("sled push")
	want := plan.Least{Length: plan.Length{Counts: 6}, Evidence: plan.Own, Source: "set by yourself"}
	if len(problems) > 0 || m.Least != want {
		t.Errorf("own move: %+v, %s", m.Least, listProblems(problems))
	}
}

// At 130 BPM a count is 0.462 s, R of a full squat on singles 0.94, of a
// deadlift 1.18, of a fly 2.22: only what floats over its full range, or rests
// on published figures, is more than borderline.
func TestJudge(t *testing.T) {
	for _, c := range []struct {
		class, rhythm string
		r             plan.Range
		bpm           float64
		way           string
		want          plan.Control
	}{
		{"squat", "1-1", plan.FullRange, 130, "each way", plan.Borderline}, // R 0.94: an assumption
		{"squat", "1-1", plan.FullRange, 135, "each way", plan.OutOfReach}, // R 1.02
		{"squat", "1-1", plan.HalfRange, 135, "each way", plan.Borderline},
		{"squat", "2-2", plan.FullRange, 130, "each way", plan.InControl},
		{"squat", "3-1", plan.FullRange, 130, "up", plan.InControl},
		{"squat", "3-1", plan.FullRange, 140, "up", plan.Borderline}, // floats, common practice
		{"squat", "1-3", plan.FullRange, 130, "down", plan.Borderline},
		{"squat", "1-3", plan.FullRange, 100, "down", plan.InControl},
		{"hinge", "1-1", plan.FullRange, 130, "each way", plan.OutOfReach},
		{"hinge", "1-1", plan.HalfRange, 130, "each way", plan.Borderline},
		{"hinge", "3-1", plan.FullRange, 130, "up", plan.Borderline},
		{"bridge", "1-1", plan.FullRange, 130, "each way", plan.Borderline},
		{"raise", "1-1", plan.FullRange, 130, "each way", plan.OutOfReach},
		{"raise", "2-2", plan.FullRange, 130, "each way", plan.Borderline},
		{"raise", "3-1", plan.FullRange, 130, "up", plan.Borderline},
		{"crunch", "1-1", plan.FullRange, 130, "each way", plan.Borderline},
		{"sit-up", "1-1", plan.FullRange, 130, "each way", plan.OutOfReach}, // R 1.16
		{"back extension", "1-1", plan.FullRange, 130, "each way", plan.Borderline},
		{"drive", "1-1", plan.FullRange, 130, "each way", plan.InControl},
		{"drive", "1-1", plan.FullRange, 160, "each way", plan.Borderline},
		{"swing", "1-1", plan.FullRange, 130, "each way", plan.OutOfReach}, // 65 a minute, published: 32-48
		{"press", "3-2", plan.FullRange, 140, "up", plan.Borderline},
	} {
		rhythm, err := plan.ParseRhythm(c.rhythm)
		if err != nil {
			t.Fatal(err)
		}
		w, got := plan.Builtin().Limits[c.class].In(c.r).Judge(rhythm, c.r, c.bpm)
		if got != c.want || got != plan.InControl && w.Name != c.way {
			t.Errorf("%s %s at %g: %s %q, want %s %q", c.class, c.rhythm, c.bpm, w.Name, got, c.way, c.want)
		}
	}
	hers := plan.Limit{Fine: 1, TooFast: 0.8, Evidence: plan.Own}
	if _, got := hers.Judge(plan.Rhythm{Down: 1, Up: 1}, plan.FullRange, 100); got != plan.OutOfReach {
		t.Errorf("below her own figure: %q", got)
	}
}
