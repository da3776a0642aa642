package pulse

import (
	"math"
	"testing"
)

// clicks is an activation with a peak every period frames.
func clicks(n int, start, period float64) []float64 {
	a := make([]float64, n)
	for i := range a {
		a[i] = 0.02
	}
	for t := start; t < float64(n-1); t += period {
		a[int(math.Round(t))] = 0.95
	}
	return a
}

func TestDecodeFollowsClicks(t *testing.T) {
	m := Default(100)
	for _, bpm := range []float64{62, 95, 120, 128, 174, 205} {
		period := 6000 / bpm
		got := m.Decode(clicks(3000, 17, period), nil, m.SpanOf(55, 215))
		near := 0
		for _, f := range got.Frames {
			off := math.Mod(float64(f)-17+period/2, period) - period/2
			if off <= 1 && off >= -period/float64(m.Slots)-1 { // the sound is in the first slot of its beat
				near++
			}
		}
		if want := int(3000 / period); near < want-1 || len(got.Frames) > want+2 {
			t.Errorf("%v BPM: %d beats, %d on a click, want %d", bpm, len(got.Frames), near, want)
		}
	}
}

func TestDecodeHoldsThroughSilence(t *testing.T) {
	m := Default(100)
	a := clicks(4000, 10, 50)
	for i := 1500; i < 2500; i++ {
		a[i] = 0.02
	}
	got := m.Decode(a, nil, m.Around(50))
	for _, f := range got.Frames {
		if off := math.Mod(float64(f)-10+25, 50) - 25; f > 10 && math.Abs(off) > 3 {
			t.Errorf("beat at frame %d is %v frames off", f, off)
		}
	}
}

func TestDecodeFindsTheBar(t *testing.T) {
	m := Default(100)
	m.Meter = 3
	beat, bar := clicks(3000, 20, 50), clicks(3000, 70, 150)
	for i := range bar {
		bar[i] = min(bar[i], beat[i]) * 0.95
	}
	got := m.Decode(beat, bar, m.SpanOf(100, 140))
	for i, f := range got.Frames {
		if want := (int(math.Round(float64(f-70)/50))%3+3)%3 + 1; f > 20 && got.Position[i] != want {
			t.Fatalf("beat at frame %d is number %d of its bar, want %d", f, got.Position[i], want)
		}
	}
}

func TestDecodeOfNothing(t *testing.T) {
	if got := Default(100).Decode(nil, nil, Span{Min: 30, Max: 60}); len(got.Frames) != 0 {
		t.Errorf("beats without sound: %v", got.Frames)
	}
}
