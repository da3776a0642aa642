package beat_test

import (
	"fmt"
	"io"
	"math"
	"slices"
	"testing"

	"onphrase/beat"
	"onphrase/beat/score"
	"onphrase/samples/synth"
)

// clip is sound in memory as a beat.Source.
type clip struct {
	rate, channels int
	samples        []float32
	at             int
}

func (c *clip) Rate() int     { return c.rate }
func (c *clip) Channels() int { return c.channels }
func (c *clip) Read(dst []float32) (int, error) {
	if c.at == len(c.samples) {
		return 0, io.EOF
	}
	n := copy(dst, c.samples[c.at:])
	c.at += n
	return n, nil
}

func stereo(s *synth.Sound) *clip {
	c := &clip{rate: s.Rate, channels: 2}
	for i := range s.Left {
		c.samples = append(c.samples, s.Left[i], s.Right[i])
	}
	return c
}

func mono(s *synth.Sound) *clip { return &clip{rate: s.Rate, channels: 1, samples: s.Mono()} }

// doubled is the sound at twice its rate.
func doubled(s *synth.Sound) *clip {
	c := &clip{rate: 2 * s.Rate, channels: 2}
	for i := 0; i+1 < len(s.Left); i++ {
		c.samples = append(c.samples, s.Left[i], s.Right[i], (s.Left[i]+s.Left[i+1])/2, (s.Right[i]+s.Right[i+1])/2)
	}
	return c
}

// song is a minute of music of our own generator.
func song(style synth.Style, bpm float64, rate int) synth.Song {
	s := synth.Song{Title: "Test", BPM: bpm, Style: style, Seed: 11, Rate: rate}
	if style == synth.Waltz {
		s.Meter = 3
	}
	for _, part := range []synth.Part{synth.Verse, synth.Drop, synth.Verse, synth.Drop} {
		s.Sections = append(s.Sections, synth.Section{Part: part, Counts: 8 * max(4, s.Meter+1)})
	}
	return s
}

func analyze(t *testing.T, src beat.Source) beat.Track {
	t.Helper()
	track, err := beat.Analyze(src)
	if err != nil {
		t.Fatal(err)
	}
	return track
}

func times(beats []synth.Beat) (out []float64) {
	for _, b := range beats {
		out = append(out, b.Time)
	}
	return out
}

func medianError(ref, est []float64) float64 {
	errs := score.Errors(ref, est)
	for i := range errs {
		errs[i] = math.Abs(errs[i])
	}
	slices.Sort(errs)
	if len(errs) == 0 {
		return math.Inf(1)
	}
	return errs[len(errs)/2]
}

// The truth is the generator's own.
func TestBeatsOfKnownMusic(t *testing.T) {
	for _, c := range []struct {
		style synth.Style
		bpm   float64
	}{
		{synth.FourOnFloor, 128}, {synth.Trance, 138}, {synth.BackBeat, 112.3}, {synth.HalfTime, 132}, {synth.Dembow, 96},
		{synth.Shuffle, 108}, {synth.FourOnFloor, 100.7},
	} {
		t.Run(fmt.Sprintf("%s %v", c.style, c.bpm), func(t *testing.T) {
			s := song(c.style, c.bpm, 22050) // renders in half the time of 44100
			truth := times(s.Truth().Beats)
			track := analyze(t, stereo(synth.Render(s)))
			if f := score.Beats(truth, track.Beats).F; f < 0.95 {
				t.Fatalf("%s at %.1f BPM: F = %.2f, found %.2f BPM", c.style, c.bpm, f, track.BPM)
			}
			if math.Abs(track.BPM-c.bpm) > 0.05 {
				t.Errorf("%.3f BPM, want %.3f", track.BPM, c.bpm)
			}
			if e := medianError(truth, track.Beats); e > 0.005 {
				t.Errorf("median error %.1f ms", 1000*e)
			}
		})
	}
}
