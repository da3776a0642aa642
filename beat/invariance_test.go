package beat_test

import (
	"math"
	"testing"

	"onphrase/beat"
	"onphrase/beat/score"
	"onphrase/samples/synth"
)

// What changes nothing for the listener must move no beat and no count 1, and
// leave their trust as it was.
func TestNothingMoves(t *testing.T) {
	at := func(rate int) *synth.Sound { return synth.Render(song(synth.BackBeat, 118, rate)) }
	sound, at48 := at(44100), at(48000)
	want := analyze(t, stereo(sound))
	const lead = 3.7 // [s]
	for _, c := range []struct {
		name  string
		src   *clip
		shift float64
	}{
		{"12 dB louder, clipped", louder(sound, 12), 0}, {"40 dB softer", louder(sound, -40), 0},
		{"one channel inverted", inverted(sound), 0},
		{"mono", mono(sound), 0}, {"silence first", late(sound, lead), lead},
		{"22.05 kHz", stereo(at(22050)), 0}, {"48 kHz", stereo(at48), 0}, {"96 kHz", doubled(at48), 0},
	} {
		t.Run(c.name, func(t *testing.T) { wantSame(t, analyze(t, c.src), want, c.shift) })
	}
}

// wantSame holds a track to another that is earlier.
func wantSame(t *testing.T, got, want beat.Track, shift float64) {
	t.Helper()
	const (
		near  = 0.005 // [s]
		share = 0.98
		alike = 0.05 // trust
	)
	if f := score.FMeasure(moved(want.Beats, shift), got.Beats, near); f < share {
		t.Errorf("only %.0f %% of the beats within 5 ms (%d beats, was %d)", 100*f, len(got.Beats), len(want.Beats))
	}
	if f := score.FMeasure(moved(ones(want), shift), ones(got), near); f < share || got.Meter != want.Meter {
		t.Errorf("only %.0f %% of the counts 1 are the same, meter %d, was %d", 100*f, got.Meter, want.Meter)
	}
	if math.Abs(got.Trust.Beat-want.Trust.Beat) > alike || math.Abs(got.Trust.Count1-want.Trust.Count1) > 2*alike {
		t.Errorf("trust %+v, was %+v", got.Trust, want.Trust)
	}
	if math.Abs(got.BPM-want.BPM) > 0.05 {
		t.Errorf("%.2f BPM, was %.2f", got.BPM, want.BPM)
	}
}

func moved(times []float64, shift float64) (out []float64) {
	for _, t := range times {
		out = append(out, t+shift)
	}
	return out
}

// ones are the times of the counts 1 [s].
func ones(t beat.Track) (out []float64) {
	for i, n := range t.BeatInBar {
		if n == 1 {
			out = append(out, t.Beats[i])
		}
	}
	return out
}

// louder is the sound some decibels louder, clipped at full scale.
func louder(s *synth.Sound, dB float64) *clip {
	c, gain := stereo(s), math.Pow(10, dB/20)
	for i, v := range c.samples {
		c.samples[i] = float32(max(-1, min(1, gain*float64(v))))
	}
	return c
}

// inverted is the sound with its right channel the other way round.
func inverted(s *synth.Sound) *clip {
	c := stereo(s)
	for i := 1; i < len(c.samples); i += 2 {
		c.samples[i] = -c.samples[i]
	}
	return c
}

// late is the sound after some seconds of silence.
func late(s *synth.Sound, lead float64) *clip {
	c := stereo(s)
	c.samples = append(make([]float32, 2*int(lead*float64(s.Rate))), c.samples...)
	return c
}
