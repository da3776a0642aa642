package correct

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"onphrase/beat"
)

// track has a count every half second from 0.5 s on, with a lead-in and the
// phrases given as "32 32 4 32".
func track(lead int, lengths string) beat.Track {
	t := beat.Track{BPM: 120, Meter: 4, Duration: 600, Trust: beat.Trust{Beat: 0.9, Count1: 0.6, Phrase: 0.3},
		Alternatives: []beat.Rival{{BPM: 60, Odds: 0.1}}, TempoChanges: []beat.TempoChange{{Time: 20, BPM: 120}}}
	n := lead
	for _, field := range strings.Fields(lengths) {
		var counts int
		fmt.Sscan(field, &counts)
		t.Phrases = append(t.Phrases, beat.Phrase{Time: at(n), Beat: n, Counts: counts, Kind: beat.KindOf(counts), Trust: 0.3,
			Energy: beat.Low})
		n += counts
	}
	for i := range n {
		t.Beats = append(t.Beats, at(i))
		t.BeatInBar = append(t.BeatInBar, ((i-lead)%4+4)%4+1)
	}
	return t
}

// at is the time of a count of such a track [s].
func at(count int) float64 { return 0.5 + float64(count)/2 }

// shape writes where the first phrase starts and the lengths of all: "4: 32 32".
func shape(t beat.Track) string {
	if len(t.Phrases) == 0 {
		return "none"
	}
	s := fmt.Sprintf("%d:", t.Phrases[0].Beat)
	for _, p := range t.Phrases {
		s += fmt.Sprintf(" %d", p.Counts)
	}
	return s
}

func TestApply(t *testing.T) {
	one := func(count int) Correction { return Correction{Kind: One, Time: at(count)} }
	phrase := func(count int) Correction { return Correction{Kind: Phrase, Time: at(count)} }
	none := func(count int) Correction { return Correction{Kind: NoPhrase, Time: at(count)} }
	counts := func(count, n int) Correction { return Correction{Kind: Counts, Time: at(count), Counts: n} }
	half, double := Correction{Kind: Half}, Correction{Kind: Double}
	tests := []struct {
		name  string
		heard string
		lead  int
		list  []Correction
		want  string
	}{
		{"one: where it is already", "32 32 32", 4, []Correction{one(36)}, "4: 32 32 32"},
		{"one: all move, the last is cut short", "32 32 32", 4, []Correction{one(38)}, "6: 32 32 30"},
		{"one: all move forward, the rest is one of its own", "32 32 32", 4, []Correction{one(34)}, "2: 32 32 32 2"},
		{"one: the shorter way", "32 32 32", 0, []Correction{one(60)}, "28: 32 32 4"},
		{"one: odd phrases keep their lengths", "32 8 32 32", 0, []Correction{one(42)}, "2: 32 8 32 30"},
		{"one: in the lead-in", "32 32", 40, []Correction{one(8)}, "8: 32 32 32"},
		{"one: only between those set before", "32 32 32 32", 0, []Correction{one(32), one(66)}, "0: 32 32 2 32 30"},
		{"one: and not those set after", "32 32 32 32", 0, []Correction{one(64), one(34)}, "2: 32 30 32 32"},
		{"one: no phrase heard", "", 70, []Correction{one(33)}, "33: 32 5"},
		{"phrase: the others stay", "32 32 32", 0, []Correction{phrase(40)}, "0: 32 8 24 32"},
		{"phrase: before the first", "32 32", 40, []Correction{phrase(0)}, "0: 32 8 32 32"},
		{"no phrase: one longer", "32 32 32", 0, []Correction{none(32)}, "0: 64 32"},
		{"no phrase: the first becomes lead-in", "4 32 32", 0, []Correction{none(0)}, "4: 32 32"},
		{"no phrase: not heard any more", "32 32", 0, []Correction{none(16)}, "0: 32 32"},
		{"counts: those after it move along", "32 32 32 32", 0, []Correction{counts(32, 36)}, "0: 32 36 32 28"},
		{"counts: shorter, the rest is one of its own", "32 32 32", 0, []Correction{counts(0, 16)}, "0: 16 32 32 16"},
		{"counts: of the last", "32 32", 0, []Correction{counts(32, 20)}, "0: 32 20 12"},
		{"counts: a long one is not cut", "32 32 32", 0, []Correction{counts(0, 40)}, "0: 40 32 24"},
		{"counts: up to what was set", "32 32 32", 0, []Correction{phrase(64), counts(0, 40)}, "0: 40 24 32"},
		{"counts: shorter before what was set", "48 32", 0, []Correction{phrase(48), counts(0, 4)}, "0: 4 32 12 32"},
		{"half: two make one", "32 32 32 32", 0, []Correction{half}, "0: 32 32"},
		{"half: one is left before a tag", "32 32 32 8 32 32", 0, []Correction{half}, "0: 32 16 4 32"},
		{"half: an odd lead-in", "32 32", 3, []Correction{half}, "1: 32"},
		{"half: the person decides which count stays", "32 32 32 32", 0, []Correction{one(33), half}, "0: 16 32 16"},
		{"double: one makes two", "32 32", 2, []Correction{double}, "4: 32 32 32 31"},
		{"double: a bridge becomes whole", "32 16 4", 0, []Correction{double}, "0: 32 32 32 7"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			heard := track(tt.lead, tt.heard)
			before := fmt.Sprint(heard)
			if tt.heard == "" {
				heard.Phrases = nil
			}
			got, err := Apply(heard, tt.list)
			if err != nil {
				t.Fatal(err)
			}
			if s := shape(got); s != tt.want {
				t.Errorf("got %s, want %s", s, tt.want)
			}
			holds(t, got)
			if tt.heard != "" && fmt.Sprint(heard) != before {
				t.Error("what was heard has changed")
			}
		})
	}
}

// holds checks what must be true of every track.
func holds(t *testing.T, got beat.Track) {
	t.Helper()
	if !got.Corrected || len(got.Beats) != len(got.BeatInBar) {
		t.Errorf("corrected %v, %d counts, %d in bars", got.Corrected, len(got.Beats), len(got.BeatInBar))
	}
	for i := 1; i < len(got.Beats); i++ {
		if got.Beats[i] <= got.Beats[i-1] {
			t.Fatalf("count %d at %g comes after %g", i, got.Beats[i], got.Beats[i-1])
		}
	}
	end := -1
	for i, p := range got.Phrases {
		switch {
		case p.Counts < 1 || p.Beat+p.Counts > len(got.Beats):
			t.Fatalf("phrase %d: counts %d to %d of %d", i+1, p.Beat, p.Beat+p.Counts, len(got.Beats))
		case end >= 0 && p.Beat != end:
			t.Errorf("phrase %d: starts on %d, the last ended on %d", i+1, p.Beat, end)
		case p.Time != got.Beats[p.Beat] || p.Kind != beat.KindOf(p.Counts):
			t.Errorf("phrase %d: %+v, count at %g", i+1, p, got.Beats[p.Beat])
		case got.BeatInBar[p.Beat] != 1:
			t.Errorf("phrase %d: starts on count %d of a bar", i+1, got.BeatInBar[p.Beat])
		case p.Trust < 0 || p.Trust > 1:
			t.Errorf("phrase %d: trust %g", i+1, p.Trust)
		}
		end = p.Beat + p.Counts
	}
}

// What a person has set is certain, and what was trusted given that it is
// right is trusted as such.
func TestTrust(t *testing.T) {
	got, err := Apply(track(0, "32 32"), []Correction{{Kind: One, Time: at(0)}})
	if err != nil {
		t.Fatal(err)
	}
	if got.Trust.Beat != 1 || got.Trust.Count1 != 1 || got.Phrases[0].Trust != 1 ||
		math.Abs(got.Phrases[1].Trust-0.5) > 1e-9 {
		t.Errorf("trust %+v, phrases %+v", got.Trust, got.Phrases)
	}
	got, err = Apply(track(0, "32 32"), []Correction{{Kind: Half}})
	if err != nil {
		t.Fatal(err)
	}
	if got.BPM != 60 || got.Trust.Beat != 1 || math.Abs(got.Trust.Count1-0.6/0.9) > 1e-9 || len(got.Alternatives) != 0 ||
		got.TempoChanges[0].BPM != 60 {
		t.Errorf("half: %+v", got)
	}
}

// A new analysis moves every count a little and finds other phrases: the
// corrections mean the same counts.
func TestSurvivesAnotherAnalysis(t *testing.T) {
	list := []Correction{{Kind: One, Time: at(40)}, {Kind: Counts, Time: at(72), Counts: 16}}
	first, err := Apply(track(4, "32 32 32 32"), list)
	if err != nil {
		t.Fatal(err)
	}
	other := track(6, "32 32 8 32 22")
	for i := range other.Beats {
		other.Beats[i] += 0.03
	}
	again, err := Apply(other, list)
	if err != nil {
		t.Fatal(err)
	}
	for _, tr := range []beat.Track{first, again} {
		starts := map[int]int{}
		for _, p := range tr.Phrases {
			starts[p.Beat] = p.Counts
		}
		if starts[40] != 32 || starts[72] != 16 || starts[88] == 0 {
			t.Errorf("phrases %s: want starts on 40, 72 and 88", shape(tr))
		}
	}
}

func TestDoubleKeepsGaps(t *testing.T) {
	heard := track(0, "32 32")
	for i := 40; i < len(heard.Beats); i++ {
		heard.Beats[i] += 7
	}
	got, err := Apply(heard, []Correction{{Kind: Double}})
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range got.Beats {
		if b > at(39)+0.01 && b < heard.Beats[40]-0.01 {
			t.Errorf("a count at %g, where none was heard", b)
		}
	}
	holds(t, got)
}

func TestSnap(t *testing.T) {
	tests := []struct {
		ask  Correction
		want float64 // 0: refused
		says string
	}{
		{Correction{Kind: One, Time: 15.4}, 15.5, ""},
		{Correction{Kind: Phrase, Time: 0.1}, 0.5, ""},
		{Correction{Kind: NoPhrase, Time: 16.9}, 16.5, ""},
		{Correction{Kind: NoPhrase, Time: 20}, 0, "no phrase starts at 0:20.000; the nearest is phrase 2 at 0:16.500"},
		{Correction{Kind: Counts, Time: 20, Counts: 8}, 16.5, ""},
		{Correction{Kind: One, Time: 100}, 0, "no count at 1:40.000; the nearest is at 0:48.000"},
	}
	for _, tt := range tests {
		got, err := Snap(track(0, "32 32 32"), tt.ask)
		switch {
		case tt.want == 0 && (err == nil || err.Error() != tt.says):
			t.Errorf("%s: %v, want %s", tt.ask, err, tt.says)
		case tt.want > 0 && (err != nil || got.Time != tt.want):
			t.Errorf("%s: %g, %v, want %g", tt.ask, got.Time, err, tt.want)
		}
	}
}

func TestApplyErrors(t *testing.T) {
	heard := track(0, "32 32")
	for _, list := range [][]Correction{
		{{Kind: Half}, {Kind: One, Time: 100}},
		{{Kind: Phrase, Time: at(32)}, {Kind: Counts, Time: at(0), Counts: 40}},
		{{Kind: Half}, {Kind: Counts, Time: at(0), Counts: 65}},
		{{Kind: NoPhrase, Time: at(0)}, {Kind: NoPhrase, Time: at(32)}},
	} {
		got, err := Apply(heard, list)
		var wrong *Error
		if !errors.As(err, &wrong) || wrong.Index != 1 || got.Corrected {
			t.Errorf("%v: %v, want an error about the second", list, err)
		}
	}
	silent := beat.Track{Problem: "no steady beat found"}
	if got, err := Apply(silent, []Correction{{Kind: Half}}); err != nil || got.Problem != silent.Problem {
		t.Errorf("no result: %+v, %v", got, err)
	}
}
