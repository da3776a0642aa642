package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
)

var update = flag.Bool("update", false, "rewrite the expected output under testdata")

// steady is a track with a count every 60/bpm s and phrases of 32 counts but
// for a tag of 4 after the third.
func steady(file, title string, bpm, one, duration float64) beat.Track {
	t := beat.Track{File: file, Title: title, BPM: bpm, Meter: 4, Duration: duration,
		Trust: beat.Trust{Beat: 1, Count1: 1, Phrase: 1}}
	for i := 0; one+float64(i)*60/bpm < duration; i++ {
		t.Beats = append(t.Beats, one+float64(i)*60/bpm)
		t.BeatInBar = append(t.BeatInBar, i%4+1)
	}
	for i, n := 0, 0; i < len(t.Beats); n++ {
		counts := 32
		if n == 3 {
			counts = 4
		}
		counts = min(counts, len(t.Beats)-i)
		t.Phrases = append(t.Phrases, beat.Phrase{Time: t.Beats[i], Beat: i, Counts: counts, Kind: beat.KindOf(counts),
			Trust: 1})
		i += counts
	}
	return t
}

const demo = `onphrase: 1
class: Harbour Strong 10
slot: "10:00"
parts:
  - part: Warm-up
    kind: warm-up
    tracks: [tidewater.mp3]
    do:
      - block: A
        sides: both
        cue: travel to the window side
        moves:
          - {move: march, counts: 8}
          - {move: step touch, counts: 8}
          - {move: heel curl, counts: 16}
  - part: Round 1
    kind: strength
    tracks: [slow-ferry.mp3, 港の灯.mp3]
    bpm: 126
    do:
      - {interval: standing climber, time: 30s, easier: hands on a bench}
      - {set: bent-over row, reps: "8 x 2-2, 8 x 1-1", weight: 2 x 6 kg, setup: 8 counts}
      - {set: one-arm row, reps: "8 x 2-2", sides: both, range: half, harder: one leg lifted}
      - {pause: water, time: 30s}
      - {set: squat, reps: "16 x 4-4"}
  - part: Cool-down
    kind: cool-down
    tracks: [gone.mp3]
    do:
      - {interval: calf stretch, time: 32 counts}
`

func demoMap(t testing.TB) *align.CountMap {
	t.Helper()
	c, problems := plan.Parse("class.yaml", []byte(demo))
	for _, p := range problems {
		t.Fatal(p.In("class.yaml"))
	}
	return align.Build(c, map[string]beat.Track{
		"tidewater.mp3":  steady("tidewater.mp3", "Tidewater", 128, 8, 192),
		"slow-ferry.mp3": steady("slow-ferry.mp3", "Slow Ferry", 124, 4, 130),
		"港の灯.mp3":        steady("港の灯.mp3", "港の灯 (Harbour Lights)", 126, 0, 200),
	})
}

// hostile is a map with text that means something to a terminal, a
// spreadsheet or Markdown.
func hostile() *align.CountMap {
	bad := []string{"=1+1", "+cmd|'/c calc'!A1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "a,b\"c\nd", "\x1b[31mred",
		"| x | <b>", "\u202egnp.exe", "＝1", "\xff\xfe", "", strings.Repeat("長い", 60)}
	m := &align.CountMap{Class: bad[0], Length: 61, Slot: 60, Parts: []align.Part{{Part: bad[1], Row: 1, Seconds: 61}}}
	for i, s := range bad {
		m.Rows = append(m.Rows, align.Row{
			Row: i + 1, Part: s, Track: s, Kind: align.SetRow, Item: s, Reps: 8,
			Rhythm: align.Rhythm{Rhythm: plan.Rhythm{Down: 2, Up: 2}}, Counts: 32, Placed: true, Phrase: 1, Count: 1,
			Cue: s, Weight: s, Easier: s, Harder: s, Moves: []align.Step{{Move: s, Counts: 8}},
		})
	}
	for _, s := range bad {
		m.Findings = append(m.Findings, align.Finding{Code: "x", Severity: align.Note, Message: s, Fix: s, Part: s,
			Source: s})
	}
	return m
}

func written(t *testing.T, name string, m *align.CountMap) string {
	t.Helper()
	f, err := Find(name)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := f.Write(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	for _, f := range Formats() {
		if f.Name == "page" { // has tests of its own, in a browser
			continue
		}
		t.Run(f.Name, func(t *testing.T) {
			got := written(t, f.Name, demoMap(t))
			file := filepath.Join("testdata", "harbour"+f.Ext)
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// An empty class is written by every format, and nothing fails on hostile
// text; a full disk is reported.
func TestEveryFormat(t *testing.T) {
	for _, f := range Formats() {
		if out := written(t, f.Name, &align.CountMap{}); out == "" {
			t.Errorf("%s: nothing for an empty class", f.Name)
		}
		written(t, f.Name, hostile())
		if err := f.Write(fullDisk{}, demoMap(t)); err == nil {
			t.Errorf("%s: a failed write is not reported", f.Name)
		}
		if f.About == "" || !strings.HasPrefix(f.Ext, ".") {
			t.Errorf("%s: incomplete entry", f.Name)
		}
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestFind(t *testing.T) {
	for name, want := range map[string]string{"text": "text", "CSV": "csv", ".md": "markdown", "json": "json",
		" txt ": "text"} {
		if f, err := Find(name); err != nil || f.Name != want {
			t.Errorf("Find(%q) = %s, %v", name, f.Name, err)
		}
	}
	for name, hint := range map[string]string{"jsn": "did you mean json?", "markdwon": "did you mean markdown?",
		"cvs": "did you mean csv?"} {
		if _, err := Find(name); err == nil || !strings.Contains(err.Error(), hint) {
			t.Errorf("Find(%q): %v, want %s", name, err, hint)
		}
	}
	if _, err := Find("spreadsheet"); err == nil || strings.Contains(err.Error(), "did you mean") ||
		!strings.Contains(err.Error(), "text, csv") {
		t.Errorf("Find of something else: %v", err)
	}
}

// What is written as CSV is read back, cell by cell, and no text cell begins
// with a character that makes a spreadsheet run it.
func TestCSVReadsBack(t *testing.T) {
	m := hostile()
	r := csv.NewReader(strings.NewReader(written(t, "csv", m)))
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) != 1+len(m.Rows)+len(m.Findings) {
		t.Fatalf("%d lines", len(lines))
	}
	column := func(name string) int {
		for i, h := range csvHead {
			if h == name {
				return i
			}
		}
		t.Fatalf("no column %s", name)
		return 0
	}
	for i, row := range m.Rows {
		for name, want := range map[string]string{"item": row.Item, "part": row.Part, "track": row.Track, "cue": row.Cue,
			"weight": row.Weight, "easier": row.Easier} {
			got := strings.TrimPrefix(lines[1+i][column(name)], "'")
			// Lines end with CR LF, so a CR of its own inside a cell is dropped.
			if got != strings.ReplaceAll(want, "\r", "") {
				t.Errorf("row %d: %s is %q, want %q", i+1, name, got, want)
			}
		}
		if got := lines[1+i][column("rhythm")]; got != "2 down 2 up" {
			t.Errorf("rhythm %q", got)
		}
	}
	for n, l := range lines {
		for _, c := range l {
			if c != "" && strings.ContainsRune("=+-@\t\r", rune(c[0])) {
				t.Errorf("line %d: cell %q would be run", n+1, c)
			}
		}
	}
}

func TestJSON(t *testing.T) {
	m := demoMap(t)
	var got struct {
		Schema string `json:"schema"`
		align.CountMap
	}
	d := json.NewDecoder(strings.NewReader(written(t, "json", m)))
	d.DisallowUnknownFields()
	if err := d.Decode(&got); err != nil {
		t.Fatal(err)
	}
	if got.Schema != "onphrase.map/1" {
		t.Errorf("schema %q", got.Schema)
	}
	if diff := cmp.Diff(*m, got.CountMap, cmpopts.IgnoreFields(align.Music{}, "Taught")); diff != "" {
		t.Errorf("round trip:\n%s", diff)
	}
	empty := written(t, "json", &align.CountMap{Rows: []align.Row{{}}, Parts: []align.Part{{}},
		Findings: []align.Finding{{}}})
	if strings.Contains(empty, "null") {
		t.Errorf("null in %s", empty)
	}
}

// The names of the contract stay: programs of other people read them.
func TestJSONContract(t *testing.T) {
	var got map[string]any
	if err := json.Unmarshal([]byte(written(t, "json", demoMap(t))), &got); err != nil {
		t.Fatal(err)
	}
	need := func(where string, v any, names string) {
		for _, n := range strings.Fields(names) {
			if _, ok := v.(map[string]any)[n]; !ok {
				t.Errorf("%s has no %s", where, n)
			}
		}
	}
	need("the map", got, "schema class rows findings")
	need("a row", got["rows"].([]any)[0], "part track row kind item side phrase count counts reps rhythm track_time class_time seconds cue_time")
	need("a finding", got["findings"].([]any)[0], "code severity part row line message figures source fix")
}

// Every line of a Markdown table has as many cells as its head, whatever the
// names in it.
func TestMarkdownTables(t *testing.T) {
	for _, m := range []*align.CountMap{demoMap(t), hostile()} {
		for _, l := range strings.Split(written(t, "markdown", m), "\n") {
			if !strings.HasPrefix(l, "|") {
				continue
			}
			bare := strings.ReplaceAll(strings.ReplaceAll(l, `\\`, ""), `\|`, "")
			if got := strings.Count(bare, "|"); got != len(tableColumns)+1 {
				t.Errorf("%d bars in %s", got, l)
			}
			if strings.Contains(strings.ReplaceAll(l, "<br>", ""), "<b>") && !strings.Contains(l, `\<b\>`) {
				t.Errorf("HTML in %s", l)
			}
		}
	}
}
