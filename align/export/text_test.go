package export

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/align"
	"onphrase/plan"
	"onphrase/plan/say"
)

func TestText(t *testing.T) {
	for _, width := range []int{40, 60, 80, 132} {
		for name, m := range map[string]*align.CountMap{"demo": demoMap(t), "hostile": hostile()} {
			var b bytes.Buffer
			if err := Text(&b, m, Style{Width: width}); err != nil {
				t.Fatal(err)
			}
			for n, l := range strings.Split(b.String(), "\n") {
				if strings.ContainsAny(l, "\x1b\r\t") || strings.Contains(l, "\u202e") {
					t.Errorf("%s, line %d: control characters in %q", name, n+1, l)
				}
				if width >= 80 && say.Columns(l) > width {
					t.Errorf("%s, line %d: %d columns of %d: %s", name, n+1, say.Columns(l), width, l)
				}
			}
			for _, c := range Cautions {
				if !strings.Contains(strings.Join(strings.Fields(b.String()), " "), c) {
					t.Errorf("%s at %d: caution missing: %s", name, width, c)
				}
			}
		}
	}
}

// Colour adds nothing but SGR sequences: without them the text is the same.
// Words are whole where she faces the class and the columns are full.
func TestTextKeepsWords(t *testing.T) {
	m := &align.CountMap{Class: "Full", Parts: []align.Part{{Part: "Back", Row: 1}}, Rows: []align.Row{{
		Row: 1, Part: "Back", Kind: align.SetRow, Item: "bent-over row", Placed: true, ClassTime: 600, Phrase: 12, Count: 17,
		Reps: 8, Rhythm: align.Rhythm{Rhythm: plan.Rhythm{Down: 2, Hold: 1, Up: 2, Rest: 1}}, Counts: 48, Side: "right",
		Mirror: "left", CueTime: 598, CueCounts: 4,
	}}}
	var b strings.Builder
	if err := Text(&b, m, Style{Width: 80}); err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"bent-over", "8 x 2-1-2-1", "right", "(you left)"} {
		if !strings.Contains(b.String(), word) {
			t.Errorf("%q is broken:\n%s", word, b.String())
		}
	}
}

func TestColor(t *testing.T) {
	var plain, colored bytes.Buffer
	m := demoMap(t)
	if err := Text(&plain, m, Style{}); err != nil {
		t.Fatal(err)
	}
	if err := Text(&colored, m, Style{Color: true}); err != nil {
		t.Fatal(err)
	}
	stripped := colored.String()
	for _, i := range []ink{bold, dim, red, yellow} {
		stripped = strings.ReplaceAll(stripped, "\x1b["+string(i)+"m", "")
	}
	stripped = strings.ReplaceAll(stripped, "\x1b[0m", "")
	if stripped == colored.String() {
		t.Error("no colour")
	}
	if diff := cmp.Diff(plain.String(), stripped); diff != "" {
		t.Error(diff)
	}
}

func TestFindings(t *testing.T) {
	var b bytes.Buffer
	m := demoMap(t)
	if err := Findings(&b, m, Style{File: "harbour.yaml"}); err != nil {
		t.Fatal(err)
	}
	for _, f := range m.Findings {
		if !strings.Contains(b.String(), f.Code) {
			t.Errorf("%s is not there", f.Code)
		}
	}
	if !strings.Contains(b.String(), "harbour.yaml:22") {
		t.Errorf("no place in the class file:\n%s", b.String())
	}
}
