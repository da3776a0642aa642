package align

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

func TestChecks(t *testing.T) {
	for _, c := range allCases() {
		t.Run(c.code+"/"+c.name, func(t *testing.T) { c.run(t) })
	}
}

func (c checkCase) run(t *testing.T) {
	class := c.built(t)
	for _, s := range c.songs {
		if c.class == "" && s.file != "a.mp3" &&
			!slices.ContainsFunc(class.Parts[0].Tracks, func(r plan.TrackRef) bool { return r.File == s.file }) {
			class.Parts = append(class.Parts, plan.Part{Name: "Other", Kind: plan.Mixed,
				Tracks: []plan.TrackRef{{File: s.file}}})
		}
	}
	m := Build(class, songs(c.songs...))
	i := slices.IndexFunc(m.Findings, func(f Finding) bool { return f.Code == c.code })
	switch {
	case i < 0 && c.fires != "":
		t.Fatalf("silent; found %v", codes(m))
	case i >= 0 && c.fires == "":
		t.Fatalf("fires: %s", m.Findings[i].Message)
	case i < 0:
		return
	}
	f := m.Findings[i]
	if f.Severity != c.fires {
		t.Errorf("severity %s, want %s", f.Severity, c.fires)
	}
	if !strings.Contains(f.Message, c.says) {
		t.Errorf("message %q does not say %q", f.Message, c.says)
	}
	if !strings.Contains(f.Fix, c.fix) {
		t.Errorf("fix %q does not say %q", f.Fix, c.fix)
	}
	for k, v := range c.want {
		if got, ok := f.Figures[k]; !ok || math.Abs(got-v) > 0.0011 {
			t.Errorf("figure %s = %v, want %v", k, got, v)
		}
	}
}

// TestEveryCheckProved holds that each check fires in one case at least, at
// the gravest severity it claims, and is silent in another.
func TestEveryCheckProved(t *testing.T) {
	for _, ch := range Checks() {
		gravest, silent := false, false
		for _, c := range allCases() {
			if c.code == ch.Code {
				gravest = gravest || c.fires == ch.Severity
				silent = silent || c.fires == ""
			}
		}
		if !gravest || !silent {
			t.Errorf("%s: fires at its gravest %v, silent %v", ch.Code, gravest, silent)
		}
	}
}

// TestChecksExplained holds that every check can be explained, and that no
// finding or explanation calls anything safe or unsafe: the figures are
// advice.
func TestChecksExplained(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Checks() {
		if c.Code == "" || c.Title == "" || c.Why == "" || c.Source == "" || c.Left == "" || seen[c.Code] {
			t.Errorf("check %q is incomplete or doubled", c.Code)
		}
		seen[c.Code] = true
		if got, ok := Explain(c.Code); !ok || got.Title != c.Title {
			t.Errorf("cannot explain %s", c.Code)
		}
		if strings.Contains(strings.ToLower(c.Why+c.Title), "safe") {
			t.Errorf("%s speaks of safety", c.Code)
		}
	}
	for _, c := range allCases() {
		class := c.built(t)
		for _, f := range Build(class, songs(c.songs...)).Findings {
			if f.Source == "" || f.Fix == "" || f.Message == "" || len(f.Figures) == 0 {
				t.Errorf("%s: incomplete finding %+v", c.name, f)
			}
			if text := strings.ToLower(fmt.Sprint(f)); strings.Contains(text, "safe") {
				t.Errorf("%s speaks of safety: %s", f.Code, text)
			}
			for k, v := range f.Figures {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: figure %s is %v", f.Code, k, v)
				}
			}
		}
	}
}

func TestExplainUnknown(t *testing.T) {
	if _, ok := Explain("no-such-check"); ok {
		t.Error("explains a check that is not there")
	}
}

// The same line done again, as in rounds, is one finding with all its rows;
// two rhythms of one set stay two.
func TestFoldRounds(t *testing.T) {
	c := onePart(t, "", `{set: squat, reps: "32 x 1-1, 32 x pulse"}`, squats)
	items := c.Parts[0].Items
	c.Parts[0].Items = append(items, items...)
	m := Build(c, songs(song{file: "a.mp3", bpm: 130, duration: 240}))
	var also [][]int
	for _, f := range m.Findings {
		if f.Code == "rhythm-too-fast" {
			also = append(also, append([]int{f.Row}, f.Also...))
		}
	}
	if want := [][]int{{1, 4}, {2, 5}}; !cmp.Equal(also, want) {
		t.Errorf("rows %v, want %v", also, want)
	}
}
