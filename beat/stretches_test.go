package beat_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"onphrase/beat/score"
	"onphrase/samples/synth"
)

// parted is music, then something else for some seconds, then music again, and
// the truth of both.
func parted(other *clip, length float64) (*clip, []float64) {
	s := song(synth.BackBeat, 120, testRate)
	s.Sections = []synth.Section{{Part: synth.Drop, Counts: 64}}
	sound, beats := synth.Render(s), times(s.Truth().Beats)
	end := int(s.Truth().End * testRate)
	music := mono(sound).samples[:end]
	c := &clip{rate: testRate, channels: 1}
	c.samples = append(append(append(c.samples, music...), other.samples[:int(length*testRate)]...), music...)
	second := float64(end)/testRate + length
	all := beats
	for _, t := range beats {
		all = append(all, second+t)
	}
	return c, all
}

// A stretch within a track whose beat is not to be trusted is told with its own
// times, unless it is a break through which both sides carry the counts.
func TestStretchesWithoutBeat(t *testing.T) {
	const start = 32.0                 // of the stretch: 64 counts at 120 [s]
	held := func(r *rand.Rand) *clip { // a pad, as in a break without drums
		c := quiet()
		for _, pitch := range []float64{110, 164.8, 220, 277.2} {
			for i := range c.samples {
				t := float64(i) / testRate
				c.samples[i] += float32(0.08 * math.Sin(2*math.Pi*pitch*t) * math.Min(1, t/2))
			}
		}
		return c
	}
	silent := func(*rand.Rand) *clip { return quiet() }
	for _, c := range []struct {
		name   string
		sound  func(*rand.Rand) *clip
		length float64 // [s]
		told   bool
	}{
		{"break of whole counts", held, 12, false}, {"break, the second side half a count late", held, 12.25, true},
		{"silence of whole counts", silent, 8, false}, {"silence, the second side late", silent, 8.2, true},
		{"free passage", freely, 13.3, true}, {"drone", drone, 14.2, true}, {"speech", babble, 15.3, true},
		{"applause", crowd, 12.7, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			src, truth := parted(c.sound(rand.New(rand.NewPCG(4, 4))), c.length)
			track := analyze(t, src)
			if !c.told {
				if len(track.Unsteady) > 0 {
					t.Errorf("unsteady %v, want none", track.Unsteady)
				}
				for k := 0.0; start+k/2 < start+c.length; k++ { // carried through
					truth = append(truth, start+k/2)
				}
			}
			slices.Sort(truth)
			if f := score.FMeasure(truth, outside(track.Beats, track.Unsteady), 0.07); f < 0.95 {
				t.Errorf("F %.3f outside of the unsteady stretches %v", f, track.Unsteady)
			}
			if !c.told {
				return
			}
			const near = 3 // [s]: six counts, certainty is averaged over four on either side
			if len(track.Unsteady) != 1 || math.Abs(track.Unsteady[0][0]-start) > near ||
				math.Abs(track.Unsteady[0][1]-start-c.length) > near {
				t.Errorf("unsteady %v, want about %.1f-%.1f", track.Unsteady, start, start+c.length)
			}
		})
	}
}

// outside are the beats that lie in no stretch.
func outside(beats []float64, stretches [][2]float64) (out []float64) {
	for _, t := range beats {
		in := false
		for _, s := range stretches {
			in = in || t >= s[0] && t < s[1]
		}
		if !in {
			out = append(out, t)
		}
	}
	return out
}
