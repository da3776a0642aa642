package spectral

import (
	"math"
	"testing"
)

func record(samples []float64, channels int) (*Frames, *Onsets, *Attack) {
	r := NewRecorder(channels)
	for i := 0; i < len(samples); i += 1000 * channels { // in blocks, as it streams
		r.Write(samples[i:min(i+1000*channels, len(samples))])
	}
	return r.Finish()
}

// burst is a second of silence, then a decaying tone.
func burst() []float64 {
	x := make([]float64, 2*Rate)
	for i := Rate; i < len(x); i++ {
		x[i] = math.Exp(-float64(i-Rate)/2000) * math.Sin(float64(i)*0.3)
	}
	return x
}

func TestOnsetComesWithTheSound(t *testing.T) {
	_, onsets, attack := record(burst(), 1)
	curve := Activation(onsets.Even())
	best := 0
	for i, v := range curve {
		if v > curve[best] {
			best = i
		}
	}
	if math.Abs(float64(best)/onsets.FPS-1) > 0.03 {
		t.Errorf("strongest onset at %.2f s, want 1", float64(best)/onsets.FPS)
	}
	for i, e := range attack.Energy {
		if at := float64(i) / attack.FPS; at < 0.99 && e > 0 {
			t.Fatalf("energy at %.3f s, before the sound", at)
		}
	}
}

func TestPolarityAndChannelsDoNotMatter(t *testing.T) {
	mono := burst()
	var same, inverted []float64
	for _, v := range mono {
		same, inverted = append(same, v, v), append(inverted, v, -v)
	}
	_, want, _ := record(mono, 1)
	for name, x := range map[string][]float64{"twice": same, "inverted": inverted} {
		_, got, _ := record(x, 2)
		for b := range want.Band {
			for i, v := range want.Band[b][:min(want.Len(), got.Len())] {
				if math.Abs(float64(got.Band[b][i]-v)) > 1e-6 {
					t.Fatalf("%s: %s at frame %d is %g, in mono %g", name, Ranges[b].Name, i, got.Band[b][i], v)
				}
			}
		}
	}
}

func TestNoveltyMarksAChangeOfNotes(t *testing.T) {
	x := make([]float64, 4*Rate)
	for i := range x {
		f := 220.0
		if i >= 2*Rate {
			f = 330
		}
		x[i] = 0.3 * math.Sin(2*math.Pi*f*float64(i)/Rate)
	}
	frames, _, _ := record(x, 1)
	n := frames.Novelty()
	best := 50
	for i := 50; i < len(n)-50; i++ { // the edges of the sound are changes, too
		if n[i] > n[best] {
			best = i
		}
	}
	if math.Abs(float64(best)/frames.FPS-2) > 0.1 {
		t.Errorf("greatest change at %.2f s, want 2", float64(best)/frames.FPS)
	}
}
