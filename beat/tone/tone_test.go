package tone

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const rate = 22050

// tones sounds the given MIDI keys together, cents above A = 440 Hz, for two
// seconds. Ref: equal temperament, key 69 = 440 Hz (MIDI Tuning Standard).
func tones(keys []int, cents float64) []float64 {
	x := make([]float64, 2*rate)
	for _, k := range keys {
		hz := 440 * math.Exp2((float64(k)-69)/12+cents/1200)
		for i := range x {
			x[i] += 0.2 * math.Sin(2*math.Pi*hz*float64(i)/rate)
		}
	}
	return x
}

func record(channels int, samples []float64, block int) *Frames {
	r := NewRecorder(rate, channels)
	for i := 0; i < len(samples); i += block {
		r.Write(samples[i:min(len(samples), i+block)])
	}
	return r.Frames()
}

// loudest lists the n strongest classes in order of pitch.
func loudest(profile []float32, n int) []int {
	var out []int
	for c, v := range profile {
		above := 0
		for _, w := range profile {
			if w > v {
				above++
			}
		}
		if above < n {
			out = append(out, c)
		}
	}
	return out
}

func TestChordAndBass(t *testing.T) {
	for _, c := range []struct {
		name  string
		chord []int // MIDI keys
		bass  int
		want  []int // pitch classes, C = 0
	}{
		{"C major over C", []int{60, 64, 67}, 36, []int{0, 4, 7}},
		{"A minor over A", []int{69, 72, 76}, 45, []int{0, 4, 9}},
		{"G major over B", []int{67, 71, 74}, 47, []int{2, 7, 11}},
		{"F sharp minor high", []int{78, 81, 85}, 42, []int{1, 6, 9}},
	} {
		for _, cents := range []float64{0, -40, -20, 20, 40} {
			f := record(1, tones(append(c.chord, c.bass), cents), 5000)
			if math.Abs(f.Tuning*100-cents) > 8 {
				t.Errorf("%s: tuning %.0f cents, want %.0f", c.name, f.Tuning*100, cents)
			}
			middle := f.Len() / 2
			if d := cmp.Diff(c.want, loudest(f.ChromaAt(middle), 3)); d != "" {
				t.Errorf("%s, %+.0f cents: chroma %v (-want +got)\n%s", c.name, cents, f.ChromaAt(middle), d)
			}
			if d := cmp.Diff([]int{c.bass % Classes}, loudest(f.BassAt(middle), 1)); d != "" {
				t.Errorf("%s, %+.0f cents: bass %v (-want +got)\n%s", c.name, cents, f.BassAt(middle), d)
			}
		}
	}
}

func TestFramesAreCentred(t *testing.T) {
	x := append(tones([]int{60}, 0), tones([]int{65}, 0)...) // the note changes at 2 s
	f := record(1, x, 4096)
	for i := range f.Len() {
		at := float64(i) / f.FPS
		want := 0
		if at > 2 {
			want = 5
		}
		if math.Abs(at-2) > 0.05 && at > 0.1 && at < 3.9 && loudest(f.ChromaAt(i), 1)[0] != want {
			t.Errorf("at %.2f s: class %v, want %d", at, loudest(f.ChromaAt(i), 1), want)
		}
	}
	if got, want := float64(f.Len())/f.FPS, 4.0; math.Abs(got-want) > 0.1 {
		t.Errorf("%.2f s of frames for %.2f s of sound", got, want)
	}
}

func TestBlocksDoNotShow(t *testing.T) {
	x := tones([]int{48, 60, 64}, 0)
	want := record(1, x, len(x))
	for _, block := range []int{1, 777, 8192} {
		if d := cmp.Diff(want, record(1, x, block)); d != "" {
			t.Errorf("blocks of %d samples: %s", block, d)
		}
	}
}

func TestGainScalesAndPolarityDoesNotCancel(t *testing.T) {
	x := tones([]int{48, 60, 64}, 0)
	want := record(1, x, 4096)
	loud := make([]float64, len(x))
	stereo := make([]float64, 2*len(x))
	for i, v := range x {
		loud[i] = 10 * v
		stereo[2*i], stereo[2*i+1] = v, -v
	}
	near := cmp.Comparer(func(a, b float32) bool { return math.Abs(float64(a-b)) <= 1e-4*math.Abs(float64(b))+1e-3 })
	got := record(1, loud, 4096)
	for i := range got.Chroma {
		got.Chroma[i] /= 10
		got.Bass[i] /= 10
	}
	tuning := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-6 })
	if d := cmp.Diff(want, got, near, tuning); d != "" {
		t.Errorf("20 dB louder: %s", d)
	}
	if d := cmp.Diff(want, record(2, stereo, 4096), near, tuning); d != "" {
		t.Errorf("two channels of opposite polarity: %s", d)
	}
}

func TestSilence(t *testing.T) {
	f := record(1, make([]float64, rate), 4096)
	for i, v := range f.Chroma {
		if v != 0 || f.Bass[i] != 0 {
			t.Fatal("silence has a pitch")
		}
	}
	if f := record(2, nil, 4096); f.Len() > 16 || f.Tuning != 0 {
		t.Errorf("nothing at all: %d frames, tuning %g", f.Len(), f.Tuning)
	}
}
