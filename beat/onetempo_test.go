package beat_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"onphrase/beat/score"
	"onphrase/samples/synth"
)

// offBeats is a section of some counts without drums in which a bass, a chord
// and a hat sound half-way between the counts alone.
func offBeats(counts int, period float64) []float32 {
	r := rand.New(rand.NewPCG(6, 6))
	out := make([]float32, int(float64(counts)*period*testRate))
	for k := range counts {
		from := int((float64(k) + 0.5) * period * testRate)
		root := []float64{55, 65.41, 49, 43.65}[k/8%4]
		for i := from; i < min(len(out), from+int(0.45*period*testRate)); i++ {
			t := float64(i-from) / testRate
			bass := 0.3 * math.Copysign(math.Exp(-6*t), math.Sin(2*math.Pi*root*t))
			chord := 0.0
			for _, ratio := range []float64{4, 5.04, 5.99} {
				chord += 0.08 * math.Exp(-9*t) * math.Sin(2*math.Pi*ratio*root*t)
			}
			hat := 0.25 * math.Exp(-40*t) * r.NormFloat64()
			out[i] += float32(bass + chord + hat)
		}
	}
	return out
}

// Sections in which only the off-beats sound do not move the counts of a song of
// one tempo.
func TestOneTempoHasOnePhase(t *testing.T) {
	const bpm, full, off = 168, 32, 96
	song := song(synth.FourOnFloor, bpm, testRate)
	song.Sections = []synth.Section{{Part: synth.Drop, Counts: 2*full + off}}
	sound, beats := synth.Render(song), times(song.Truth().Beats)
	c := mono(sound)
	from := int(beats[full] * testRate)
	copy(c.samples[from:], offBeats(off, 60./bpm))
	track := analyze(t, c)
	if f := score.Beats(beats, track.Beats).F; f < 0.98 {
		t.Errorf("F %.3f", f)
	}
	for i := 1; i < len(track.Beats); i++ {
		if d := (track.Beats[i] - track.Beats[i-1]) * bpm / 60; math.Abs(d-1) > 0.2 {
			t.Errorf("%.2f counts from %.2f s to the next", d, track.Beats[i-1])
		}
	}
	if len(track.Unsteady) > 0 || len(track.Songs) > 0 {
		t.Errorf("unsteady %v, songs %v", track.Unsteady, track.Songs)
	}
}
