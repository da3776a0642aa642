package align

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What she stands by is not counted, and listed with her reason: said of an
// item, of its part, or of the class.
func TestKnown(t *testing.T) {
	music := songs(song{file: "a.mp3", bpm: 134, duration: 240})
	item := `{set: squat, reps: "16 x 1-1", known: {rhythm-too-fast: light bar}}`
	for _, c := range []struct {
		name        string
		head        string
		items       []string
		open, known int // findings of that code
		also        []int
	}{
		{"of the item", "", []string{item, `{set: squat, reps: "8 x 2-2"}`}, 0, 1, []int{}},
		{"of another item", "", []string{`{set: squat, reps: "8 x 2-2", known: rhythm-too-fast}`,
			`{set: squat, reps: "16 x 1-1"}`}, 1, 0, nil},
		{"of the part", "known: {rhythm-too-fast: light bar}",
			[]string{`{set: squat, reps: "16 x 1-1"}`, `{set: squat, reps: "16 x 1-1"}`}, 0, 1, []int{2}},
		{"of one of two", "", []string{item, `{set: squat, reps: "16 x 1-1"}`}, 1, 1, []int{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Build(onePart(t, c.head, c.items...), music)
			n := 0
			for _, f := range m.Findings {
				if f.Code == "rhythm-too-fast" {
					n++
				}
			}
			if n != c.open || len(m.Known) != c.known {
				t.Fatalf("%d open, %d known: %v", n, len(m.Known), codes(m))
			}
			if c.known == 0 {
				return
			}
			if f := m.Known[0]; f.Code != "rhythm-too-fast" || f.Reason != "light bar" || !cmp.Equal(f.Also, c.also) {
				t.Errorf("%+v", f)
			}
		})
	}
}

// One change of several that she stands by leaves the others together.
func TestKnownChange(t *testing.T) {
	m := Build(onePart(t, "", `{set: squat, reps: "8 x 4-4", weight: heavy}`,
		`{set: squat, reps: "8 x 4-4", weight: light, known: change-too-short}`,
		`{set: squat, reps: "8 x 4-4", weight: medium}`, `{set: squat, reps: "8 x 4-4", weight: heavy}`),
		songs(song{file: "a.mp3", bpm: 128, duration: 240}))
	if f := found(t, m, "change-too-short"); f.Figures["changes"] != 2 || f.Row != 3 {
		t.Errorf("open: %+v", f)
	}
	if len(m.Known) != 1 || m.Known[0].Row != 2 {
		t.Errorf("known: %+v", m.Known)
	}
}

// The gravest come first, then the order of the class, the class as a whole last.
func TestFindingsInOrder(t *testing.T) {
	m := Build(onePart(t, "kind: strength", `{set: squat, reps: "7 x 4-4"}`, `{set: squat, reps: "16 x 1-1"}`,
		`{set: squat, reps: "8 x 4-4"}`),
		songs(song{file: "a.mp3", bpm: 134, duration: 240}))
	for i := 1; i < len(m.Findings); i++ {
		a, b := m.Findings[i-1], m.Findings[i]
		if Graver(a, b) > 0 || Graver(a, b) == 0 && b.Row > 0 && a.Row > b.Row {
			t.Errorf("%s row %d comes before %s row %d", a.Severity, a.Row, b.Severity, b.Row)
		}
	}
	if m.Findings[0].Severity != Fix || len(m.Findings) < 3 {
		t.Errorf("%v", codes(m))
	}
}
