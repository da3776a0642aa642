package chart

import (
	"math"
	"strings"
	"testing"
)

// The charts of these tests are written by ourselves, in the formats as we know
// them from memory.

const stepsChart = `#TITLE:Paper Kite; // a comment
#MUSIC:kite.ogg;
#OFFSET:-0.500;
#BPMS:0.000=120.000,
8.000=60.000;
#STOPS:4.000=0.250;
#TIMESIGNATURES:0.000=4=4,8.000=3=4;
#LABELS:0.000=Song Start,
4.000=Chorus,8.000=Bridge;
#NOTEDATA:;
#OFFSET:9;
#BPMS:0=999;
`

func TestSteps(t *testing.T) {
	c := read(t, "kite.ssc", stepsChart)
	if c.Title != "Paper Kite" || c.Audio != "kite.ogg" {
		t.Errorf("title %q, audio %q", c.Title, c.Audio)
	}
	// Counts 0-4 at 0.5 s, from 0.5 s on; then a pause of 0.25 s; from 8 on a second each, in three.
	want := []Beat{
		{0.5, 1}, {1, 2}, {1.5, 3}, {2, 4}, {2.75, 1}, {3.25, 2}, {3.75, 3}, {4.25, 4},
		{4.75, 1}, {5.75, 2}, {6.75, 3}, {7.75, 1},
	}
	same(t, c.Beats(0.4, 8), want)
	sections(t, c, Section{2.5, "Chorus"}, Section{4.75, "Bridge"})
	if c.Steady() {
		t.Error("a chart with a pause is called steady")
	}
}

// The tempo may change between two counts: the next count comes at the new one.
func TestTempoBetweenCounts(t *testing.T) {
	c := read(t, "x.sm", "#OFFSET:0;#BPMS:0=60,2.5=120;")
	same(t, c.Beats(0, 4), []Beat{{0, 1}, {1, 2}, {2, 3}, {2.75, 4}, {3.25, 1}, {3.75, 2}})
}

func TestStepsThatJump(t *testing.T) {
	for _, line := range []string{"#WARPS:4=2;", "#BPMS:0=120,8=-120;"} {
		text := strings.Replace("#OFFSET:0;#BPMS:0=120;", "#BPMS:0=120;", line+"#BPMS:0=120;", 1)
		if _, err := Read("x.sm", []byte(text)); err == nil {
			t.Errorf("%s is read", line)
		}
	}
}

const circlesChart = `osu file format v14

[General]
AudioFilename: lantern.mp3
Mode: 3

[Metadata]
Title:Lantern Street

[TimingPoints]
1000,500,4,2,0,60,1,0
3000,-50,4,2,0,60,0,1
5000,-100,4,2,0,60,0,1
7000,400,3,2,0,60,1,0

[HitObjects]
64,192,1000,1,0,0:0:0:0:
`

func TestCircles(t *testing.T) {
	c := read(t, "lantern.osu", circlesChart)
	if c.Title != "Lantern Street" || c.Audio != "lantern.mp3" {
		t.Errorf("title %q, audio %q", c.Title, c.Audio)
	}
	// Before its first point the chart counts on backwards.
	same(t, c.Beats(0, 2), []Beat{{0, 3}, {0.5, 4}, {1, 1}, {1.5, 2}})
	same(t, c.Beats(6.4, 8.3), []Beat{{6.5, 4}, {7, 1}, {7.4, 2}, {7.8, 3}, {8.2, 1}})
	sections(t, c, Section{3, Climax}, Section{7, ClimaxEnd})
	if bpm := c.BPM(20); bpm != 150 {
		t.Errorf("%g BPM most of the time, not 150", bpm)
	}
}

func TestDrumChartsAreLeftAlone(t *testing.T) {
	if _, err := Read("x.osu", []byte(strings.Replace(circlesChart, "Mode: 3", "Mode: 1", 1))); err == nil {
		t.Error("a chart for drums is read")
	}
	if _, err := Read("x.tja", []byte("BPM:120")); err == nil {
		t.Error("a .tja is read")
	}
}

func TestColumns(t *testing.T) {
	c := read(t, "dune.qua", `AudioFile: dune.mp3
Title: 'Slow: Dune'
TimingPoints:
- StartTime: 250
  Bpm: 120
- StartTime: 2250
  Bpm: 100
  Signature: Triple
Bookmarks:
- StartTime: 2250
  Note: drop
SliderVelocities: []
`)
	if c.Title != "Slow: Dune" || c.Audio != "dune.mp3" {
		t.Errorf("title %q, audio %q", c.Title, c.Audio)
	}
	want := []Beat{{0.25, 1}, {0.75, 2}, {1.25, 3}, {1.75, 4}, {2.25, 1}, {2.85, 2}, {3.45, 3}, {4.05, 1}}
	same(t, c.Beats(0, 4.2), want)
	sections(t, c, Section{2.25, "drop"})
}

func TestFrets(t *testing.T) {
	c := read(t, "notes.chart", `[Song]
{
  Name = "Glass Hill"
  Offset = 0.1
  Resolution = 192
  MusicStream = "song.ogg"
}
[SyncTrack]
{
  0 = TS 6 3
  0 = B 120000
  576 = TS 4
  1344 = B 90000
}
[Events]
{
  0 = E "section Intro"
  576 = E "section Chorus_1"
  600 = E "lyric oh"
  1344 = E "end"
}
`)
	// Six eighths are three counts; then four; the second bar of four is at 90.
	want := []Beat{{0.1, 1}, {0.6, 2}, {1.1, 3}, {1.6, 1}, {2.1, 2}, {2.6, 3}, {3.1, 4}, {3.6, 1}, {3.6 + 2./3, 2}}
	same(t, c.Beats(0, 4.5), want)
	sections(t, c, Section{0.1, "Intro"}, Section{1.6, "Chorus 1"})
	if !c.Lyrics {
		t.Error("its lyrics are not seen")
	}
}

func TestTurns(t *testing.T) {
	bars := `[{"lengthInSteps":16,"mustHitSection":false},{"lengthInSteps":16,"mustHitSection":false},
		{"sectionBeats":4,"mustHitSection":true},{"sectionBeats":4,"mustHitSection":true,"changeBPM":true,"bpm":60},
		{"sectionBeats":4,"mustHitSection":false}]`
	for _, text := range []string{
		`{"song":{"song":"Moth","bpm":120,"notes":` + bars + `}}` + "\x00\x00",
		`{"song":"Moth","bpm":120,"notes":` + bars + `}`,
	} {
		c := read(t, "moth.json", text)
		if c.Title != "Moth" {
			t.Errorf("title %q", c.Title)
		}
		same(t, c.Beats(4.9, 8.1), []Beat{{5, 3}, {5.5, 4}, {6, 1}, {7, 2}, {8, 3}})
		sections(t, c, Section{4, "turn 8"}, Section{10, "turn 8"})
	}
}

func TestSteady(t *testing.T) {
	// Three anchors on one grid, to the millisecond that the format keeps.
	c := read(t, "x.osu", "[TimingPoints]\n1000,461.538,4\n2846,461.538,4\n4692,461.538,4\n")
	if !c.Steady() {
		t.Error("one tempo is called unsteady")
	}
	c = read(t, "x.osu", "[TimingPoints]\n1000,461.538,4\n3076,461.538,4\n")
	if c.Steady() {
		t.Error("half a count too much is called steady")
	}
}

func TestBadCharts(t *testing.T) {
	for name, text := range map[string]string{
		"a.sm": "#OFFSET:0;#BPMS:;", "b.sm": "#OFFSET:x;#BPMS:0=1;", "c.osu": "[TimingPoints]\nx,500", "d.osu": "",
		"e.qua": "TimingPoints: [{Bpm: -3}]", "f.chart": "[Song]\n{\n}\n", "g.json": "[1]", "h.json": "{}", "i.txt": "",
		"j.osu": "[TimingPoints]\n0,1e9,4", "k.qua": ":::", "l.chart": "[Song]\nResolution = 0",
	} {
		if c, err := Read(name, []byte(text)); err == nil {
			t.Errorf("%s: %q is read: %+v", name, text, c)
		} else if !strings.HasPrefix(err.Error(), name) {
			t.Errorf("%s: the error does not say where: %v", name, err)
		}
	}
}

func read(t *testing.T, name, text string) *Chart {
	t.Helper()
	c, err := Read(name, []byte("\ufeff"+text))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func same(t *testing.T, got, want []Beat) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d counts, not %d: %v", len(got), len(want), got)
	}
	for i := range got {
		if math.Abs(got[i].Time-want[i].Time) > 1e-6 || got[i].One != want[i].One {
			t.Errorf("count %d: %v, not %v", i, got[i], want[i])
		}
	}
}

func sections(t *testing.T, c *Chart, want ...Section) {
	t.Helper()
	if len(c.Sections) != len(want) {
		t.Fatalf("sections %v, not %v", c.Sections, want)
	}
	for i, s := range c.Sections {
		if math.Abs(s.Time-want[i].Time) > 1e-6 || s.Name != want[i].Name {
			t.Errorf("section %v, not %v", s, want[i])
		}
	}
}
