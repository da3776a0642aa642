package synth

import (
	"math"
	"testing"
)

// form is a song with one of everything odd.
func form() Song {
	return Song{
		Title: "Form", BPM: 120, Seed: 7, Lead: 0.3, Ambient: 2.2, PickUp: 2,
		Sections: []Section{{Part: Intro, Counts: 32}, {Part: Tag, Counts: 4}, {Part: Verse, Counts: 64},
			{Part: Bridge, Counts: 16}, {Part: Drop, Counts: 40}},
	}
}

func TestTruthPhrases(t *testing.T) {
	truth := form().Truth()
	want := []Phrase{
		{2.5, 0, 2, "pick-up"}, {3.5, 2, 32, "intro"}, {19.5, 34, 4, "tag"}, {21.5, 38, 32, "verse"},
		{37.5, 70, 32, "verse"}, {53.5, 102, 16, "bridge"}, {61.5, 118, 32, "drop"}, {77.5, 150, 8, "drop"},
	}
	if len(truth.Phrases) != len(want) {
		t.Fatalf("%d phrases, want %d: %v", len(truth.Phrases), len(want), truth.Phrases)
	}
	for i, p := range truth.Phrases {
		if math.Abs(p.Time-want[i].Time) > 1e-9 || p.Beat != want[i].Beat || p.Counts != want[i].Counts ||
			p.Label != want[i].Label {
			t.Errorf("phrase %d is %+v, want %+v", i+1, p, want[i])
		}
	}
	if truth.Beats[0].InBar != 3 || truth.Beats[1].InBar != 4 || truth.Beats[2].InBar != 1 {
		t.Errorf("two pick-up counts are %v in the bar, want 3 and 4, then 1", truth.Beats[:3])
	}
	if math.Abs(truth.End-81.5) > 1e-9 {
		t.Errorf("the last count ends at %.3f s, want 81.5", truth.End)
	}
}

// Whatever the song, its truth is a strictly increasing row of beats that the
// phrases cover once, each starting on a count 1.
func TestTruthHolds(t *testing.T) {
	for _, tempo := range []float64{60, 96, 126.5, 174} {
		for _, meter := range []int{3, 4} {
			for _, feel := range []Feel{{}, {Drift: 0.03}, {Drift: 0.1, Jitter: 0.02, Swing: 1}} {
				s := form()
				s.BPM, s.Meter, s.Feel = tempo, meter, feel
				s.Sections = append(s.Sections, Section{Part: Outro, Counts: 31, BPM: tempo * 1.05})
				holds(t, s)
			}
		}
	}
}

func holds(t *testing.T, s Song) {
	t.Helper()
	truth, next := s.Truth(), 0
	for i, p := range truth.Phrases {
		if p.Beat != next || truth.Beats[p.Beat].Time != p.Time {
			t.Errorf("%g BPM, meter %d: phrase %d starts on beat %d, want %d", s.BPM, s.Meter, i+1, p.Beat, next)
		}
		if p.Label != "pick-up" && truth.Beats[p.Beat].InBar != 1 {
			t.Errorf("%g BPM, meter %d: phrase %d starts on %d of the bar", s.BPM, s.Meter, i+1, truth.Beats[p.Beat].InBar)
		}
		next += p.Counts
	}
	if next != len(truth.Beats) {
		t.Errorf("%g BPM, meter %d: phrases cover %d beats of %d", s.BPM, s.Meter, next, len(truth.Beats))
	}
	fastest, slowest := 60/(s.BPM*1.05*(1+s.Feel.Drift)), 60/(s.BPM*(1-s.Feel.Drift))
	for i := 1; i < len(truth.Beats); i++ {
		if d := truth.Beats[i].Time - truth.Beats[i-1].Time; d < fastest-1e-9 || d > slowest+1e-9 {
			t.Errorf("%g BPM, meter %d: beat %d comes %.4f s after the one before, want %.4f to %.4f", s.BPM, s.Meter, i, d,
				fastest, slowest)
			return
		}
	}
}

// The drift is no more than asked, and no less than half of it.
func TestDrift(t *testing.T) {
	s := Song{BPM: 120, Seed: 3, Feel: Feel{Drift: 0.04}, Sections: []Section{{Part: Verse, Counts: 512}}}
	beats, least, most := s.Truth().Beats, math.Inf(1), 0.0
	for i := 1; i < len(beats); i++ {
		bpm := 60 / (beats[i].Time - beats[i-1].Time)
		least, most = min(least, bpm), max(most, bpm)
	}
	if least < 120*0.96-1e-6 || most > 120*1.04+1e-6 || most-least < 120*0.04 {
		t.Errorf("the tempo walks from %.2f to %.2f BPM, want at most 115.2 to 124.8 and at least half of that", least, most)
	}
}

func TestBadSongs(t *testing.T) {
	good := form()
	tests := map[string]func(*Song){
		"tempo":    func(s *Song) { s.BPM = 500 },
		"meter":    func(s *Song) { s.Meter = 5 },
		"rate":     func(s *Song) { s.Rate = 100 },
		"pick-up":  func(s *Song) { s.PickUp = 8 },
		"lead":     func(s *Song) { s.Lead = -1 },
		"ambient":  func(s *Song) { s.Ambient = -1 },
		"drift":    func(s *Song) { s.Feel.Drift = 0.5 },
		"style":    func(s *Song) { s.Style = "polka" },
		"part":     func(s *Song) { s.Sections = []Section{{Part: "solo", Counts: 32}} },
		"counts":   func(s *Song) { s.Sections = []Section{{Part: Verse}} },
		"sections": func(s *Song) { s.Sections = nil },
	}
	for name, spoil := range tests {
		s := good
		spoil(&s)
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("a song with a wrong %s was not refused", name)
				}
			}()
			s.Truth()
		}()
	}
}
