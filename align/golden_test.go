package align

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"onphrase/plan"
)

var update = flag.Bool("update", false, "rewrite the expected rows and findings under testdata")

// TestGolden lays whole classes on hand-made tracks. A case is a txtar file:
// class.yaml, tracks (a line each: file bpm=128 one=0.5 length=192
// phrases="32 32 4 32"), and the rows and findings expected.
func TestGolden(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) { golden(t, file) })
	}
}

func golden(t *testing.T, file string) {
	a, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	c, problems := plan.Parse("class.yaml", section(a, "class.yaml").Data)
	for _, p := range problems {
		t.Errorf("%s", p.In("class.yaml"))
	}
	m := Build(c, songs(readSongs(t, string(section(a, "tracks").Data))...))
	got := map[string]string{"rows": rowLines(m), "findings": findingLines(m)}
	for _, name := range []string{"rows", "findings"} {
		f := section(a, name)
		if *update {
			f.Data = []byte(got[name])
			continue
		}
		if diff := cmp.Diff(string(f.Data), got[name]); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	if *update {
		if err := os.WriteFile(file, txtar.Format(a), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// section is a file of the archive, added when it is not there.
func section(a *txtar.Archive, name string) *txtar.File {
	i := slices.IndexFunc(a.Files, func(f txtar.File) bool { return f.Name == name })
	if i < 0 {
		a.Files = append(a.Files, txtar.File{Name: name})
		i = len(a.Files) - 1
	}
	return &a.Files[i]
}

var field = regexp.MustCompile(`(\w+)=("[^"]*"|\S+)`)

func readSongs(t *testing.T, lines string) []song {
	var out []song
	for _, l := range strings.Split(strings.TrimSpace(lines), "\n") {
		file, _, _ := strings.Cut(l, " ")
		s := song{file: file}
		for _, f := range field.FindAllStringSubmatch(l, -1) {
			value := strings.Trim(f[2], `"`)
			v, _ := strconv.ParseFloat(value, 64)
			switch f[1] {
			case "bpm":
				s.bpm = v
			case "one":
				s.one = v
			case "length":
				s.duration = v
			case "phrases":
				s.phrases = value
			case "pickup":
				s.pickup = int(v)
			case "trust":
				s.trust = v
			case "loudness":
				s.loudness = v
			case "unsteady":
				var u [2]float64
				fmt.Sscanf(value, "%g-%g", &u[0], &u[1])
				s.unsteady = append(s.unsteady, u)
			case "problem":
				s.problem = value
			default:
				t.Fatalf("tracks: unknown field %s", f[1])
			}
		}
		out = append(out, s)
	}
	return out
}

// rowLines writes one line a row, with every figure that a change could move.
func rowLines(m *CountMap) string {
	var b strings.Builder
	for i, p := range m.Parts {
		fmt.Fprintf(&b, "%s %.3f+%.3f\n", p.Part, p.ClassTime, p.Seconds)
		for _, r := range m.RowsOf(i) {
			name := strings.TrimSpace(r.Item + " " + r.Side)
			if r.Reps > 0 {
				name += fmt.Sprintf(" %dx%s", r.Reps, r.Rhythm)
			}
			fmt.Fprintf(&b, "%3d %-8s %-34s", r.Row, r.Kind, name)
			if r.Placed {
				fmt.Fprintf(&b, " %2d/%-2d %3dc  track %7.3f  class %8.3f +%6.3f  cue %8.3f", r.Phrase, r.Count, r.Counts,
					r.TrackTime, r.ClassTime, r.Seconds, r.CueTime)
			} else {
				fmt.Fprintf(&b, "  ?/?  %3dc  +%.3f", r.Counts, r.Seconds)
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}

func findingLines(m *CountMap) string {
	var b strings.Builder
	for _, f := range m.Findings {
		fmt.Fprintf(&b, "%s %s row %d line %d\n  %s\n  try: %s\n", f.Severity, f.Code, f.Row, f.Line, f.Message, f.Fix)
	}
	return b.String()
}
