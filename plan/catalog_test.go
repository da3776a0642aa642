package plan_test

import (
	"math"
	"slices"
	"testing"

	"onphrase/plan"
)

// Every move must be of use: laid by its counts, or judged by its class.
func TestCatalogIsComplete(t *testing.T) {
	c := plan.Builtin()
	if len(c.Moves) < 60 {
		t.Errorf("%d moves", len(c.Moves))
	}
	for _, m := range c.Moves {
		limit, limited := c.LimitFor(m)
		if m.Counts == 0 && !limited {
			t.Errorf("%s has neither counts nor a limit", m.Name)
		}
		if m.Least.Length == (plan.Length{}) && !limited {
			t.Errorf("%s: least is missing, what one repetition takes at the least", m.Name)
		}
		if m.Least.Counts > m.Counts || m.Least.Length != (plan.Length{}) &&
			(m.Least.Evidence == "" || m.Least.Source == "") {
			t.Errorf("%s takes %d counts, at the least %+v", m.Name, m.Counts, m.Least)
		}
		if m.Class != "" && (!limited || limit.Class != m.Class) {
			t.Errorf("%s: no limit for class %q", m.Name, m.Class)
		}
		if !slices.Contains(plan.Patterns, m.Pattern) {
			t.Errorf("%s: pattern %q", m.Name, m.Pattern)
		}
		for _, name := range append([]string{m.Name}, m.Also...) {
			if got, ok := c.Find(name); !ok || got.Name != m.Name {
				t.Errorf("%s finds %q, want %q", name, got.Name, m.Name)
			}
		}
	}
	for class, l := range c.Limits {
		if l.Source == "" || l.Evidence == "" || l.TooFast <= 0 || l.Fine < l.TooFast {
			t.Errorf("limit of %s is incomplete: %+v", class, l)
		}
		if class == plan.PulseClass || l.Ballistic {
			continue // both ways at once, or nothing to control on the way up
		}
		for name, w := range map[string]plan.WayLimit{"down": l.Down, "up": l.Up} {
			if w.Fine <= 0 || w.Evidence == "" || w.Source == "" {
				t.Errorf("limit of %s: %s is missing, what one fast way beside a slow one may take: %+v", class, name, w)
			}
			if w.Fine >= l.Fine {
				t.Errorf("limit of %s: %s alone is fine from %g s, slower than both ways alike", class, name, w.Fine)
			}
		}
	}
	if _, ok := c.Limits[plan.PulseClass]; !ok {
		t.Error("no limit for pulses")
	}
}

// The limits and the tempo up to which each rhythm is fine. Ref: the
// project's reasoning from R = 0.503·d/T², between the paces of ACSM 2009
// (Ratamess et al., Med Sci Sports Exerc 41:687), metronome-paced tests
// (bench press 60 BPM, curl-up 40 BPM) and, for swings, Wesley & Kivi 2017.
func TestCatalogLimits(t *testing.T) {
	for _, c := range []struct {
		move          string
		fine, tooFast float64
		tempo         [3]int // the most BPM for "fine" at 1-1, 2-2, 4-4
	}{
		{"deadlift", 0.90, 0.65, [3]int{66, 133, 266}},
		{"good morning", 0.90, 0.65, [3]int{66, 133, 266}},
		{"squat", 0.80, 0.55, [3]int{75, 150, 300}},
		{"lunge", 0.80, 0.55, [3]int{75, 150, 300}},
		{"push-up", 0.90, 0.60, [3]int{66, 133, 266}},
		{"bent-over row", 0.80, 0.55, [3]int{75, 150, 300}},
		{"biceps curl", 0.85, 0.60, [3]int{70, 141, 282}},
		{"lateral raise", 1.25, 0.90, [3]int{48, 96, 192}},
		{"crunch", 0.90, 0.45, [3]int{66, 133, 266}},
		{"double-leg lower", 1.05, 0.75, [3]int{57, 114, 228}},
		{"kettlebell swing", 0.625, 0.60, [3]int{96, 192, 384}},
	} {
		m, _ := plan.Builtin().Find(c.move)
		l, ok := plan.Builtin().LimitFor(m)
		if !ok || l.Fine != c.fine || l.TooFast != c.tooFast {
			t.Errorf("%s: fine from %g, too fast below %g, want %g and %g", c.move, l.Fine, l.TooFast, c.fine, c.tooFast)
		}
		for i, counts := range []float64{1, 2, 4} {
			if got := int(counts * 60 / l.Fine); got != c.tempo[i] {
				t.Errorf("%s: fine up to %d BPM at %g counts a phase, want %d", c.move, got, counts, c.tempo[i])
			}
		}
	}
	// Wesley & Kivi 2017: 32 to 48 swings a minute were sustained.
	if l := plan.Builtin().Limits["swing"]; 30/l.TooSlow != 32 || 30/l.Fine != 48 || 30/l.TooFast != 50 {
		t.Errorf("swings a minute: %g to %g, too fast over %g", 30/l.TooSlow, 30/l.Fine, 30/l.TooFast)
	}
}

// E20 and the table of peak loads at 130 BPM.
func TestPeakLoad(t *testing.T) {
	for _, c := range []struct {
		class                    string
		singles, twoTwo, fourFor float64
	}{
		{"squat", 0.94, 0.24, 0.06},
		{"hinge", 1.18, 0.30, 0.07},
		{"press", 1.06, 0.27, 0.07},
		{"row", 0.83, 0.21, 0.05},
		{"curl", 1.77, 0.44, 0.11},
		{"raise", 2.22, 0.56, 0.14},
	} {
		l := plan.Builtin().Limits[c.class]
		for counts, want := range map[float64]float64{1: c.singles, 2: c.twoTwo, 4: c.fourFor} {
			if got := l.PeakLoad(counts * 60 / 130); math.Abs(got-want) > 0.006 { // the table rounds the factor to 0.503
				t.Errorf("%s at %g counts: R = %.3f, want %.2f", c.class, counts, got, want)
			}
		}
	}
	if got := (plan.Limit{Path: 1}).PeakLoad(1); math.Abs(got-0.503) > 0.0005 {
		t.Errorf("factor %.4f, want 0.503", got)
	}
}

// At the scaled limit, half the range takes the same peak load.
func TestLimitAtHalfRange(t *testing.T) {
	for class, full := range plan.Builtin().Limits {
		half := full.In(plan.HalfRange)
		if full.Ballistic {
			if half != full {
				t.Errorf("%s: thrown over half the range", class)
			}
			continue
		}
		for _, got := range []float64{half.TooFast / full.TooFast, half.FloatsBelow() / full.FloatsBelow()} {
			if math.Abs(got-0.707) > 0.0005 {
				t.Errorf("%s: factor %.4f", class, got)
			}
		}
		if a, b := full.PeakLoad(full.Fine), half.PeakLoad(half.Fine); math.Abs(a-b) > 1e-12 {
			t.Errorf("%s: peak load %g at full range, %g at half", class, a, b)
		}
		if full.In(plan.FullRange) != full {
			t.Errorf("%s: full range changes the limit", class)
		}
	}
}

func TestCatalogFindsOtherSpellings(t *testing.T) {
	for name, want := range map[string]string{
		"Squats": "squat", "bent over rows": "bent-over row", "PUSH UPS": "push-up", "pushups": "push-up",
		"press-ups":     "push-up",
		"good mornings": "good-morning", "Lateral raises": "lateral raise", "flies": "fly", "flyes": "fly",
		"crunches":      "crunch",
		"chest presses": "chest press", "jumping jacks": "jumping jack", "V step": "v-step", "vsteps": "v-step",
		"kickbacks":    "kick-back",
		"Child’s pose": "child's pose", "plié": "wide squat", "squat & press": "squat to press",
	} {
		if m, ok := plan.Builtin().Find(name); !ok || m.Name != want {
			t.Errorf("%q finds %q, want %q", name, m.Name, want)
		}
	}
	for _, name := range []string{"", "-", "xyz", "squa"} {
		if m, ok := plan.Builtin().Find(name); ok {
			t.Errorf("%q finds %q", name, m.Name)
		}
	}
}

func TestCatalogNearest(t *testing.T) {
	for name, want := range map[string]string{
		"sqaut": "squat", "grapvine": "grapevine", "deadlif": "deadlift", "very slow deadlifts": "deadlift",
		"burpie": "burpee",
	} {
		if got, ok := plan.Builtin().Nearest(name); !ok || got != want {
			t.Errorf("%q is nearest to %q, want %q", name, got, want)
		}
	}
	if got, ok := plan.Builtin().Nearest("underwater basket weaving"); ok {
		t.Errorf("nonsense is nearest to %q", got)
	}
}

func TestCatalogWith(t *testing.T) {
	base := plan.Builtin()
	own := base.With([]plan.Move{{Name: "Crab Reach", Class: "press"}, {Name: "squat", Counts: 8}})
	if m, ok := own.Find("crab reaches"); !ok || m.Class != "press" {
		t.Errorf("the new move is %+v", m)
	}
	if m, _ := own.Find("squats"); m.Counts != 8 {
		t.Errorf("the replaced move is %+v", m)
	}
	if _, ok := base.Find("crab reach"); ok {
		t.Error("the built-in catalogue has changed")
	}
	if m, _ := base.Find("squat"); m.Counts != 4 {
		t.Error("a move of the built-in catalogue has changed")
	}
}
