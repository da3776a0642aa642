package plan_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

const standing = `onphrase: 1
class: Harbour
known: {tempo-jump: we all know the song}
parts:
  - part: Round 1
    tracks: [ferry.mp3]
    known: [spare-counts, Low Trust]
    do:
      - {set: squat, reps: 16 x 1-1, known: {rhythm-too-fast: "light bar, they know it", impact: }}
      - superset: Arms
        rounds: 2
        known: one-sided
        do:
          - {set: biceps curl, reps: 8 x 2-2, known: rhythm-too-fast}
          - {pause: water, time: 30s}
      - {repeat: squat, known: {rhythm-too-fast: still light}}
`

// A finding that she stands by is read on the class, a part and any item, and
// the nearest word of hers counts.
func TestParseKnown(t *testing.T) {
	c, problems := plan.Parse("class.yaml", []byte(standing))
	if len(problems) > 0 {
		t.Fatal(listProblems(problems))
	}
	part := &c.Parts[0]
	var codes [][]string
	for _, it := range part.Items {
		var of []string
		for _, k := range it.Known {
			of = append(of, k.Code)
		}
		codes = append(codes, of)
	}
	want := [][]string{
		{"rhythm-too-fast", "impact"}, {"rhythm-too-fast", "one-sided"}, {"one-sided"}, {"rhythm-too-fast", "one-sided"},
		{"one-sided"},
		{"rhythm-too-fast", "rhythm-too-fast", "impact"},
	}
	if diff := cmp.Diff(want, codes); diff != "" {
		t.Errorf("codes (-want +got):\n%s", diff)
	}
	for _, tt := range []struct {
		code   string
		item   int
		reason string
		stands bool
	}{
		{"rhythm-too-fast", 0, "light bar, they know it", true},
		{"rhythm-too-fast", 1, "", true},
		{"rhythm-too-fast", 2, "", false},
		{"rhythm-too-fast", 5, "still light", true},
		{"low-trust", 2, "", true},
		{"tempo-jump", 2, "we all know the song", true},
	} {
		k, ok := c.Stands(tt.code, part, &part.Items[tt.item])
		if ok != tt.stands || k.Reason != tt.reason {
			t.Errorf("%s of item %d: %+v, %v", tt.code, tt.item, k, ok)
		}
	}
	if _, ok := c.Stands("low-trust", nil, nil); ok {
		t.Error("what she says of a part holds for the class")
	}
	if k := part.Items[0].Known[0]; k.Pos != (plan.Pos{Line: 9, Col: 46}) {
		t.Errorf("a code stands at %v", k.Pos)
	}
}

func TestUnknownFindings(t *testing.T) {
	c, _ := plan.Parse("class.yaml", []byte(standing))
	have := []string{"rhythm-too-fast", "tempo-jump", "spare-counts", "trust-low", "side-missing", "impact"}
	want := []plan.Problem{
		{Pos: plan.Pos{Line: 7, Col: 27}, Msg: `known: no finding is called "low-trust"`,
			Hint: "'onphrase check --explain CODE' explains a finding"},
		{Pos: plan.Pos{Line: 12, Col: 16}, Msg: `known: no finding is called "one-sided"`,
			Hint: "'onphrase check --explain CODE' explains a finding"},
	}
	if diff := cmp.Diff(want, c.UnknownFindings(have)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestParseRefusesBadKnown(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{`- {set: squat, reps: 8 x 2-2, known: ▶"rhythm-too-fast, tempo-jump"}`,
			`known: "rhythm-too-fast, tempo-jump" is no finding`, "known: [rhythm-too-fast, tempo-jump]?"},
		{`- {set: squat, reps: 8 x 2-2, known: ▶R2}`, `known: "R2" is no finding`,
			"the code of a finding, like rhythm-too-fast"},
		{`- {set: squat, reps: 8 x 2-2, known: [tempo-jump, ▶tempo-jump]}`, "known: tempo-jump is named twice",
			"keep one of them"},
		{`- {set: squat, reps: 8 x 2-2, known: ▶[]}`, "known is an empty list", "like known: [rhythm-too-fast, tempo-jump]"},
		{`- {set: squat, reps: 8 x 2-2, known: ▶{}}`, "known names nothing",
			"like known: rhythm-too-fast, or known: {rhythm-too-fast: \"light bar, they know it\"}"},
		{`- {set: squat, reps: 8 x 2-2, known: {tempo-jump: ▶[a]}}`, "the reason of tempo-jump is one value, not a list",
			`the reason of tempo-jump: "a"`},
	})
}
