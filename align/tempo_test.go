package align

import (
	"testing"

	"onphrase/beat"
)

// stepped is a track that plays so many counts at each tempo, in phrases of 32.
func stepped(file string, steps ...float64) beat.Track {
	t := beat.Track{File: file, Meter: 4, Trust: beat.Trust{Beat: 1, Count1: 1, Phrase: 1}}
	at := 0.0
	for i := 0; i < len(steps); i += 2 {
		for range int(steps[i]) {
			if n := len(t.Beats); n%beat.PhraseLen == 0 {
				t.Phrases = append(t.Phrases, beat.Phrase{Time: at, Beat: n, Counts: beat.PhraseLen,
					Kind: beat.KindOf(beat.PhraseLen), Trust: 1})
			}
			t.BeatInBar = append(t.BeatInBar, len(t.Beats)%4+1)
			t.Beats = append(t.Beats, at)
			at += 60 / steps[i+1]
		}
	}
	t.BPM, t.Duration = steps[1], at
	return t
}

// Where the tempo of a track changes, every figure comes from the counts that
// the row lies on, and the head of a part from those that it uses.
func TestTempoOfTheCounts(t *testing.T) {
	track := stepped("a.mp3", 128, 130, 64, 136.3, 64, 118)
	tracks := map[string]beat.Track{"a.mp3": track}
	m := Build(onePart(t, "", `{set: deadlift, reps: "32 x 2-2"}`, `{set: deadlift, reps: "16 x 2-2"}`,
		`{set: deadlift, reps: "16 x 2-2"}`), tracks)
	f := found(t, m, "rhythm-too-fast") // 2-2 is fine up to 133
	if f.Row != 2 || len(f.Also) > 0 {
		t.Errorf("on row %d and %v", f.Row, f.Also)
	}
	near(t, "bpm", f.Figures["bpm"], 136.3, 0.01)
	near(t, "seconds", f.Figures["seconds_per_phase"], 2*60/136.3, 0.001)
	head := m.Parts[0].Tracks[0]
	near(t, "slowest", head.Slowest, 118, 0.01)
	near(t, "fastest", head.Fastest, 136.3, 0.01)

	m = Build(onePart(t, "start: phrase 5", `{set: squat, reps: "16 x 2-2"}`), tracks)
	near(t, "played under the head of the part", m.Parts[0].Tracks[0].Played, 136.3, 0.01)
}

// A jump is what people hear at the change: the end of the one against the
// beginning of the other, not the means of both.
func TestTempoJumpAtTheChange(t *testing.T) {
	tracks := map[string]beat.Track{"a.mp3": stepped("a.mp3", 64, 124, 64, 130),
		"b.mp3": stepped("b.mp3", 64, 130, 128, 136)}
	m := Build(onePart(t, "tracks: [a.mp3, b.mp3]", `{interval: jog, time: 128 counts}`,
		`{interval: jog, time: 64 counts}`), tracks)
	for _, f := range m.Findings {
		if f.Code == "tempo-jump" {
			t.Errorf("%s", f.Message)
		}
	}
}

// Both ends of a class out of place are two findings.
func TestPartOrderSaysBoth(t *testing.T) {
	m := Build(classOf(t, parts("A cardio: "+minutes("2:00"), "W warm-up: "+minutes("2:00"), "C cool-down: "+
		minutes("2:00"), "B cardio: "+minutes("2:00"))), songs(long...))
	n := 0
	for _, f := range m.Findings {
		if f.Code == "part-order" {
			n++
		}
	}
	if n != 2 {
		t.Errorf("%d findings: %v", n, codes(m))
	}
}
