package beat_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/beat/score"
	"onphrase/samples/synth"
)

// tempi is music of our generator whose sections have tempi of their own, the
// song's first.
func tempi(style synth.Style, counts int, bpm ...float64) synth.Song {
	s := synth.Song{Title: "Test", BPM: bpm[0], Style: style, Seed: 7, Rate: 22050}
	parts := []synth.Part{synth.Drop, synth.Verse}
	for i, v := range bpm {
		s.Sections = append(s.Sections, synth.Section{Part: parts[i%2], Counts: counts, BPM: v})
	}
	return s
}

// truth are the changes of tempo of a list of beats, and nothing else of it:
// from where on another interval lasts.
func truth(beats []float64) (changes []beat.TempoChange) {
	for i := 2; i+1 < len(beats); i++ {
		before, after := beats[i]-beats[i-1], beats[i+1]-beats[i]
		if math.Abs(math.Log(after/before)) > 0.004 {
			changes = append(changes, beat.TempoChange{Time: beats[i], BPM: 60 / after})
		}
	}
	return changes
}

// bpmOver is the mean tempo of the beats within a time [1/min].
func bpmOver(beats []float64, from, to float64) float64 {
	first, last, n := 0.0, 0.0, 0
	for _, t := range beats {
		if t >= from && t < to {
			if n == 0 {
				first = t
			}
			last = t
			n++
		}
	}
	return 60 * float64(n-1) / (last - first)
}

// wantChanges holds the changes of a track to those of the truth: as many, each
// within two bars, with its tempo, and before it that of the one before.
func wantChanges(t *testing.T, track beat.Track, beats []float64) {
	t.Helper()
	const twoBars, exact = 8, 0.1 // [counts], [1/min]
	want := truth(beats)
	if len(track.TempoChanges) != len(want) {
		t.Fatalf("changes %v, want %v", track.TempoChanges, want)
	}
	from := beats[0] - 0.1
	for i, w := range want {
		got := track.TempoChanges[i]
		if math.Abs(got.Time-w.Time) > twoBars*60/w.BPM {
			t.Errorf("change at %.2f s, want %.2f", got.Time, w.Time)
		}
		if math.Abs(got.BPM-w.BPM) > exact {
			t.Errorf("%.2f BPM from %.2f s on, want %.2f", got.BPM, got.Time, w.BPM)
		}
		end := min(got.Time, w.Time)
		if b, bw := bpmOver(track.Beats, from, end), bpmOver(beats, from, end); math.Abs(b-bw) > exact {
			t.Errorf("%.2f BPM before %.2f s, want %.2f", b, got.Time, bw)
		}
		from = max(got.Time, w.Time)
	}
}

// A step of the tempo at a bar line is listed, however small or large.
func TestTempoSteps(t *testing.T) {
	styles := []synth.Style{synth.FourOnFloor, synth.BackBeat, synth.Trance, synth.Funk, synth.HalfTime}
	for i, step := range []float64{0.01, -0.01, 0.02, -0.02, 0.04, -0.04, 0.08, -0.08, 0.12, -0.12} {
		style := styles[i%len(styles)]
		t.Run(fmt.Sprintf("%s %+.0f %%", style, 100*step), func(t *testing.T) {
			t.Parallel()
			s := tempi(style, 40, 122, 122*(1+step))
			beats := times(s.Truth().Beats)
			track := analyze(t, stereo(synth.Render(s)))
			wantChanges(t, track, beats)
			if f := score.Beats(beats, track.Beats).F; f < 0.97 {
				t.Errorf("F %.3f", f)
			}
		})
	}
}

// What speeds up or slows down from count to count makes no step.
func TestDriftIsNoStep(t *testing.T) {
	ramp := func(from, to float64) synth.Song {
		bpm := []float64{from, from, from, from}
		for i := range 8 {
			bpm = append(bpm, from+(to-from)*float64(i+1)/9)
		}
		return tempi(synth.BackBeat, 8, append(bpm, to, to, to, to)...)
	}
	people := func(drift, jitter float64, seed uint64) synth.Song {
		s := song(synth.BackBeat, 112, 22050)
		s.Seed, s.Feel = seed, synth.Feel{Drift: drift, Jitter: jitter}
		return s
	}
	for _, c := range []struct {
		name string
		song synth.Song
	}{
		{"faster", ramp(116, 123)}, {"slower", ramp(128, 122)},
		{"a little", people(0.005, 0.002, 1)}, {"some", people(0.01, 0.006, 2)}, {"much", people(0.02, 0.01, 3)},
		{"very much", people(0.03, 0.004, 4)},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			beats := times(c.song.Truth().Beats)
			track := analyze(t, stereo(synth.Render(c.song)))
			if len(track.TempoChanges) > 0 {
				t.Errorf("changes %v", track.TempoChanges)
			}
			if f := score.Beats(beats, track.Beats).F; f < 0.97 {
				t.Errorf("F %.3f", f)
			}
		})
	}
}

// The mixes of the corpus: every song begins another tempo.
func TestTempoStepsOfMixes(t *testing.T) {
	for _, id := range []string{"d_mix01", "d_mix02"} {
		t.Run(id, func(t *testing.T) {
			t.Parallel()
			stem := corpus(t) + "/" + id
			wantChanges(t, analyze(t, open(t, stem+".mp3")), beatsOf(t, stem+".beats"))
		})
	}
}

// corpus is the folder of music with exact counts beside the repository.
func corpus(t *testing.T) string {
	t.Helper()
	const folder = "../../shared/corpus"
	if _, err := os.Stat(folder + "/manifest.tsv"); err != nil {
		t.Skip("SKIPPED, NOTHING CHECKED: no corpus at ../shared/corpus beside the repository")
	}
	return folder
}

// beatsOf reads the first column of a .beats file [s].
func beatsOf(t *testing.T, file string) (beats []float64) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		var at float64
		if _, err := fmt.Sscan(line, &at); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		beats = append(beats, at)
	}
	return beats
}
