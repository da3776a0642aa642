package loudness

import (
	"math"
	"math/rand/v2"
	"testing"
)

// tone is a stretch of a sine.
type tone struct {
	level   float64 // peak [dBFS]
	seconds float64
}

// sine is 1 kHz in every channel, the levels one after the other.
func sine(rate, channels int, tones ...tone) []float32 {
	var out []float32
	i := 0
	for _, s := range tones {
		peak := math.Pow(10, s.level/20)
		for range int(s.seconds * float64(rate)) {
			v := float32(peak * math.Sin(2*math.Pi*1000*float64(i)/float64(rate)))
			for range channels {
				out = append(out, v)
			}
			i++
		}
	}
	return out
}

func measure(t *testing.T, rate, channels int, samples []float32) float64 {
	t.Helper()
	m := NewMeter(rate, channels)
	m.Write(samples)
	lufs, ok := m.Integrated()
	if !ok {
		t.Fatal("no loudness")
	}
	return lufs
}

// The signals of EBU Tech 3341, table 1, cases 1 to 5, which must read -23 or
// -33 LUFS within 0.1 LU. The levels are from memory.
func TestTech3341(t *testing.T) {
	for _, c := range []struct {
		name  string
		tones []tone
		want  float64
	}{
		{"1: -23", []tone{{-23, 20}}, -23},
		{"2: -33", []tone{{-33, 20}}, -33},
		{"3: relative gate", []tone{{-36, 10}, {-23, 60}, {-36, 10}}, -23},
		{"4: both gates", []tone{{-72, 10}, {-36, 10}, {-23, 60}, {-36, 10}, {-72, 10}}, -23},
		{"5: within the gate", []tone{{-26, 20}, {-20, 20.1}, {-26, 20}}, -23},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := measure(t, 48000, 2, sine(48000, 2, c.tones...)); math.Abs(got-c.want) > 0.1 {
				t.Errorf("%.2f LUFS, want %.1f", got, c.want)
			}
		})
	}
}

// At 48 kHz the filters are those of BS.1770-4, tables 1 and 2 (figures from
// memory).
func TestCoefficients(t *testing.T) {
	shelf, high := newShelf(48000), newHighPass(48000)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"shelf b0", shelf.b0, 1.53512485958697}, {"shelf b1", shelf.b1, -2.69169618940638},
		{"shelf b2", shelf.b2, 1.19839281085285}, {"shelf a1", shelf.a1, -1.69065929318241},
		{"shelf a2", shelf.a2, 0.73248077421585}, {"high pass a1", high.a1, -1.99004745483398},
		{"high pass a2", high.a2, 0.99007225036621}, {"high pass b1", high.b1, -2},
	} {
		if math.Abs(c.got-c.want) > 1e-11 {
			t.Errorf("%s is %.14f, want %.14f", c.name, c.got, c.want)
		}
	}
}

// A tone reads the same at any sample rate, and in one channel 3 LU less.
func TestRates(t *testing.T) {
	for _, rate := range []int{8000, 11025, 16000, 22050, 32000, 44100, 48000, 88200, 96000, 192000} {
		if got := measure(t, rate, 2, sine(rate, 2, tone{-23, 5})); math.Abs(got+23) > 0.1 {
			t.Errorf("%d Hz: %.2f LUFS, want -23", rate, got)
		}
		if got := measure(t, rate, 1, sine(rate, 1, tone{-23, 5})); math.Abs(got+26.01) > 0.1 {
			t.Errorf("%d Hz, one channel: %.2f LUFS, want -26", rate, got)
		}
	}
}

func TestNoLoudness(t *testing.T) {
	for name, samples := range map[string][]float32{
		"nothing":   nil,
		"too short": sine(48000, 2, tone{-20, 0.399}),
		"silence":   make([]float32, 2*48000*3),
		"too quiet": sine(48000, 2, tone{-75, 5}),
	} {
		m := NewMeter(48000, 2)
		m.Write(samples)
		if lufs, ok := m.Integrated(); ok {
			t.Errorf("%s: %.1f LUFS", name, lufs)
		}
	}
}

// hiss is noise that swells and fades.
func hiss(n int) []float32 {
	rng := rand.New(rand.NewPCG(17, 70))
	out := make([]float32, n)
	for i := range out {
		out[i] = float32(0.1 * rng.NormFloat64() * (1 + math.Sin(float64(i)/60000)))
	}
	return out
}

// It does not matter in what pieces the samples come, nor what was asked
// between them; twice the level is 6.02 LU more.
func TestStreaming(t *testing.T) {
	samples := hiss(2 * 44100 * 6)
	want := measure(t, 44100, 2, samples)
	rng := rand.New(rand.NewPCG(1, 2))
	m := NewMeter(44100, 2)
	louder := make([]float32, len(samples))
	for i, v := range samples {
		louder[i] = 2 * v
	}
	for rest := samples; len(rest) > 0; {
		n := min(len(rest), 2*rng.IntN(9000))
		m.Write(rest[:n])
		rest = rest[n:]
		m.Integrated()
	}
	if got, _ := m.Integrated(); got != want {
		t.Errorf("in pieces %v, at once %v", got, want)
	}
	if got := measure(t, 44100, 2, louder); math.Abs(got-want-20*math.Log10(2)) > 1e-6 {
		t.Errorf("twice the level is %.3f LU more", got-want)
	}
}

// Silence behind sound must not slow the meter down.
func BenchmarkMeter(b *testing.B) {
	for name, samples := range map[string][]float32{"sound": hiss(2 * 44100 * 60),
		"silence": make([]float32, 2*44100*60)} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				m := NewMeter(44100, 2)
				m.Write([]float32{1, 1})
				m.Write(samples)
			}
		})
	}
}

// A tone that gets 20 dB quieter after a second and a quarter has a hundredth
// of its power in every step from there on.
func TestPowers(t *testing.T) {
	m := NewMeter(44100, 2)
	m.Write(sine(44100, 2, tone{-10, 1.5}, tone{-30, 0.75}))
	got := m.Powers(0.5)
	if len(got) != 5 {
		t.Fatalf("%d steps of half a second in 2.25 s", len(got))
	}
	for i, want := range []float64{1, 1, 1, 0.01, 0.01} {
		if ratio := got[i] / got[1]; math.Abs(ratio/want-1) > 0.05 {
			t.Errorf("step %d: %.4f of the second, want %.2f", i, ratio, want)
		}
	}
}
