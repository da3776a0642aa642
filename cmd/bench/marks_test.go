package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/beat"
)

// counted is a song of one tempo, in fours from its first count on.
func counted(n int, period float64) song {
	var s song
	for i := range n {
		s.beats = append(s.beats, float64(i)*period)
		s.position = append(s.position, i%4+1)
	}
	return s
}

// heardAs is what an analysis would say that hears every count, with phrases
// from these counts on, of this trust.
func heardAs(s song, trust float64, starts ...int) beat.Track {
	t := beat.Track{Beats: s.beats, BeatInBar: s.position, Meter: 4}
	for i, k := range starts {
		end := len(s.beats)
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		t.Phrases = append(t.Phrases, beat.Phrase{Time: s.beats[k], Beat: k, Counts: end - k, Trust: trust})
	}
	return t
}

func TestMarksAreRead(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "a.sections")
	text := "1.5\tIntro\n9\tChorus 1a\n17\tChorus 1b\n25\tVerse\n33\tkiai\n41\tkiai end\n" +
		"49\tturn 16\n50\tturn 8\n60\tthe hook\n"
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	got, err := readMarks(file)
	if err != nil {
		t.Fatal(err)
	}
	want := []mark{{1.5, part}, {9, chorus}, {25, part}, {33, chorus}, {49, turn}, {60, part}}
	if len(got) != len(want) {
		t.Fatalf("%v, not %v", got, want)
	}
	for i := range got {
		if got[i] != want[i] {
			t.Errorf("%v, not %v", got[i], want[i])
		}
	}
	if none, err := readMarks(filepath.Join(dir, "none")); none != nil || err != nil {
		t.Errorf("without a file: %v, %v", none, err)
	}
	if err := os.WriteFile(file, []byte("1\tIntro\nChorus\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := readMarks(file); err == nil || !strings.Contains(err.Error(), "a.sections:2") {
		t.Errorf("the error does not say where: %v", err)
	}
}

// Of four choruses one starts with a phrase, one 16 counts into one, one lies
// before them all, and one is no count 1 of its chart and is not asked for.
func TestChoruses(t *testing.T) {
	s := counted(160, 0.5)
	s.marks = []mark{
		{s.beats[4], chorus}, {s.beats[40] + 0.05, chorus}, {s.beats[64], chorus}, {s.beats[112], chorus},
		{s.beats[96], part},
	}
	r := result{song: s, track: heardAs(s, 0.95, 32, 64, 96)}
	r.measureMarks()
	if len(r.found) != 4 {
		t.Fatalf("%d marks are asked for, not 4: %+v", len(r.found), r.found)
	}
	a, b, c := r.found[0], r.found[1], r.found[2]
	if a.inside || a.start || !a.one || a.rule {
		t.Errorf("before the phrases: %+v", a)
	}
	if !b.inside || !b.start || !b.one || !b.rule || b.trust != 0.95 {
		t.Errorf("at a phrase start: %+v", b)
	}
	if !c.inside || c.start || !c.one || c.rule || c.late != 16 {
		t.Errorf("in the middle of a phrase: %+v", c)
	}
	if got := marked([]result{r}, chorus); got != "0.333" {
		t.Errorf("the share is %s, not 1 of 3", got)
	}
	var out bytes.Buffer
	reportMarks(&out, []result{r})
	for _, part := range []string{
		"chorus starts that charts mark on their count 1: 3; a phrase starts there 0.333, count 1 is there 1",
		"counting 32s from the first count 1 gets there 0.333", "(1 lie in none)", "0.90 - 1.00      2   0.95   0.50",
		"after a phrase start (times): 16 (1)", "2.0 s  in no phrase",
		"56.0 s  16 counts into a phrase of trust 0.95\n",
		"part starts that charts mark on their count 1: 1; a phrase starts there 1.000",
	} {
		if !strings.Contains(out.String(), part) {
			t.Errorf("%q is missing in\n%s", part, out.String())
		}
	}
}

// A phrase start within 70 ms of a mark is at it, one farther away is not.
func TestChorusWindow(t *testing.T) {
	s := counted(64, 0.5)
	s.marks = []mark{{s.beats[32], chorus}}
	for _, c := range []struct {
		late float64
		want bool
	}{{0.06, true}, {-0.06, true}, {0.08, false}, {-0.08, false}} {
		track := heardAs(s, 0.5, 0, 32)
		track.Phrases[1].Time += c.late
		r := result{song: s, track: track}
		r.measureMarks()
		if r.found[0].start != c.want {
			t.Errorf("%.2f s late: %t", c.late, r.found[0].start)
		}
	}
}

func TestPhrasesInStepWithTurns(t *testing.T) {
	s := counted(200, 0.5)
	// From 100 on voices are 4 counts off those before; at 86 one comes early.
	for _, k := range []int{32, 48, 64, 86, 100, 116} {
		s.marks = append(s.marks, mark{s.beats[k], turn})
	}
	track := heardAs(s, 0.8, 0, 16, 32, 56, 80, 100, 150)
	track.Phrases[4].Time += 0.2
	track.Phrases = append([]beat.Phrase{{Time: -1, Trust: 1}}, track.Phrases...)
	r := result{song: s, track: track}
	r.measureSteps()
	// 0 and 150 are farther than half a phrase from the turns, and -1 s lies before the truth.
	want := []int{0, 0, 8, offBeat, 0}
	if len(r.steps) != len(want) {
		t.Fatalf("%+v, not %v", r.steps, want)
	}
	for i, s := range r.steps {
		if s.off != want[i] || s.trust != 0.8 {
			t.Errorf("start %d: %+v, not %d off", i, s, want[i])
		}
	}
	if got := inStep([]result{r}); got != "0.600" {
		t.Errorf("the share is %s, not 3 of 5", got)
	}
	var out bytes.Buffer
	reportSteps(&out, []result{r})
	for _, part := range []string{"0.70 - 0.90      5   0.80   0.60", ": -1 (1) 8 (1)",
		"28.0 s   8 off, trust 0.80"} {
		if !strings.Contains(out.String(), part) {
			t.Errorf("%q is missing in\n%s", part, out.String())
		}
	}
}

func TestNothingMarked(t *testing.T) {
	r := result{song: counted(64, 0.5)}
	r.measureMarks()
	r.measureSteps()
	var out bytes.Buffer
	reportMarks(&out, []result{r})
	reportSteps(&out, []result{r})
	if out.Len() > 0 || marked([]result{r}, chorus) != "-" || inStep([]result{r}) != "-" {
		t.Errorf("without marks there is a table:\n%s", out.String())
	}
}

func TestNearest(t *testing.T) {
	times := []float64{1, 2, 4}
	for _, c := range []struct {
		t    float64
		i    int
		away float64
	}{{0, 0, 1}, {1.4, 0, 0.4}, {1.6, 1, 0.4}, {3.5, 2, 0.5}, {9, 2, 5}} {
		if i, away := nearest(times, c.t); i != c.i || math.Abs(away-c.away) > 1e-12 {
			t.Errorf("nearest to %g: %d, %g away, not %d, %g", c.t, i, away, c.i, c.away)
		}
	}
	if i, away := nearest(nil, 1); i != -1 || !math.IsInf(away, 1) {
		t.Errorf("of nothing: %d, %g", i, away)
	}
}
