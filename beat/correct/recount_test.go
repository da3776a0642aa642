package correct

import (
	"math"
	"testing"
)

func TestRecount(t *testing.T) {
	every := func(num, den int, at float64) Correction {
		return Correction{Kind: Every, Step: Ratio{num, den}, Time: at}
	}
	for _, c := range []struct {
		name  string
		lead  int
		heard string
		fix   Correction
		bpm   float64
		first float64 // the first count [s]
		want  string
	}{
		{"off the beat: phrases stay where they are", 0, "32 32 32", every(1, 1, 10.75), 120, 0.75, "0: 32 32 31"},
		{"off the beat, by a tap that is a little late", 0, "32 32", every(1, 1, 10.80), 120, 0.75, "0: 32 31"},
		{"three of four", 0, "32 32 32", every(3, 4, 0.5), 160, 0.5, "0: 32 32 32 31"},
		{"every second, from an odd one", 0, "32 32", every(2, 1, 1.0), 60, 1.0, "0: 32"},
		{"steady", 0, "32 32", Correction{Kind: Steady, BPM: 100, Time: 6.0}, 100, 0, "10: 32 32 32 32 32 1"},
	} {
		heard := track(c.lead, c.heard)
		if c.fix.Kind == Steady {
			heard.Duration = 102.3
		}
		got, err := Apply(heard, []Correction{c.fix})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if math.Abs(got.BPM-c.bpm) > 1e-9 || math.Abs(got.Beats[0]-c.first) > 1e-9 {
			t.Errorf("%s: %.3f BPM from %.3f s, want %.3f from %.3f", c.name, got.BPM, got.Beats[0], c.bpm, c.first)
		}
		if s := shape(got); s != c.want {
			t.Errorf("%s: phrases %s, want %s", c.name, s, c.want)
		}
		for i := 1; i < len(got.Beats); i++ {
			if step := got.Beats[i] - got.Beats[i-1]; math.Abs(step-60/c.bpm) > 1e-9 {
				t.Errorf("%s: count %d after %.3f s, want %.3f", c.name, i, step, 60/c.bpm)
				break
			}
		}
	}
}

// Where counts are missing none are made up.
func TestRecountKeepsGaps(t *testing.T) {
	heard := track(0, "32 32")
	for i := 40; i < len(heard.Beats); i++ {
		heard.Beats[i] += 20
	}
	got, err := Apply(heard, []Correction{{Kind: Every, Step: Ratio{1, 1}, Time: 0.75}})
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range got.Beats {
		if b > heard.Beats[39] && b < heard.Beats[40] {
			t.Errorf("a count at %.2f s, where nothing was heard", b)
		}
	}
}

func TestCheckedIsCertain(t *testing.T) {
	got, err := Apply(track(0, "32 32 32"), []Correction{{Kind: Checked}})
	if err != nil {
		t.Fatal(err)
	}
	if got.Trust.Beat != 1 || got.Trust.Count1 != 1 || got.Trust.Phrase != 1 || len(got.Alternatives) > 0 {
		t.Errorf("trust %+v, rivals %v", got.Trust, got.Alternatives)
	}
	for _, p := range got.Phrases {
		if p.Trust != 1 {
			t.Errorf("phrase at %.1f s: trust %.2f", p.Time, p.Trust)
		}
	}
}

// What is written is read again as it was.
func TestNewKindsInAFile(t *testing.T) {
	f := NewFile("a.mp3", "sha256:9f2c")
	want := []Correction{
		{Kind: Every, Step: Ratio{3, 2}, Time: 8.712}, {Kind: Every, Step: Ratio{1, 1}, Time: 8.712},
		{Kind: Steady, BPM: 126.04, Time: 8.712}, {Kind: Checked},
	}
	for _, c := range want {
		f.Add(c)
	}
	src, err := f.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	again, problems := Parse(src)
	if len(problems) > 0 {
		t.Fatalf("%v in\n%s", problems, src)
	}
	for i, c := range again.List {
		if c != want[i] {
			t.Errorf("%+v, want %+v", c, want[i])
		}
	}
	for _, bad := range []string{"every: 9", "every: 3/0", "every: x", "bpm: 3000", "bpm: fast"} {
		if _, problems := Parse([]byte("onphrase: 1\ntrack: a\nsound: s\ncorrections:\n  - " + bad +
			"\n    at: 0:01\n")); len(problems) == 0 {
			t.Errorf("%s: no problem", bad)
		}
	}
}
