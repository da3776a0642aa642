package dsp

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/dsp/fourier"
)

func noise(n int, seed uint64) []float64 {
	r := rand.New(rand.NewPCG(seed, 1))
	x := make([]float64, n)
	for i := range x {
		x[i] = r.Float64()*2 - 1
	}
	return x
}

// Ref: gonum's dsp/fourier v0.17.0 as the other implementation.
func TestSpectrumAgreesWithGonum(t *testing.T) {
	for _, n := range []int{4, 8, 16, 64, 128, 1024, 4096} {
		a, b := noise(n, 1), noise(n, 2)
		s := NewSpectrum(n)
		gotA, gotB := make([]float64, n/2+1), make([]float64, n/2+1)
		sum, one := make([]float64, n/2+1), make([]float64, n/2+1)
		s.Pair(gotA, gotB, a, b)
		s.Sum(sum, interleave(a, b), 2)
		s.Sum(one, a, 1)
		wantA, wantB := gonumPower(a), gonumPower(b)
		for k := range gotA {
			for _, c := range [][2]float64{{gotA[k], wantA[k]}, {gotB[k], wantB[k]}, {sum[k], (wantA[k] + wantB[k]) / 2},
				{one[k], wantA[k]}} {
				if math.Abs(c[0]-c[1]) > 1e-9*float64(n) {
					t.Fatalf("size %d, bin %d: power %g, gonum says %g", n, k, c[0], c[1])
				}
			}
		}
	}
}

func interleave(a, b []float64) []float64 {
	var x []float64
	for i := range a {
		x = append(x, a[i], b[i])
	}
	return x
}

func gonumPower(x []float64) []float64 {
	w := Hann(len(x))
	y := make([]float64, len(x))
	for i := range x {
		y[i] = x[i] * w[i]
	}
	p := make([]float64, len(x)/2+1)
	for k, c := range fourier.NewFFT(len(x)).Coefficients(nil, y) {
		p[k] = power(c)
	}
	return p
}

func TestAutocorrelationAgreesWithDefinition(t *testing.T) {
	x := noise(300, 3)
	got := Autocorrelation(x, 50, 2)
	for lag := range got {
		want := 0.0
		for i := lag; i < len(x); i++ {
			want += x[i] * x[i-lag]
		}
		if math.Abs(got[lag]-want) > 1e-9 {
			t.Errorf("lag %d: %g, want %g", lag, got[lag], want)
		}
	}
}

func TestResampler(t *testing.T) {
	const target = 22050
	for _, rate := range []int{8000, 22050, 32000, 44100, 48000, 96000} {
		for _, channels := range []int{1, 2} {
			in := make([]float32, rate*channels)
			for i := range in {
				in[i] = float32(math.Sin(2 * math.Pi * 1000 * float64(i/channels) / float64(rate)))
			}
			r := NewResampler(rate, target, channels)
			var out []float64
			for i := 0; i < len(in); i += 998 { // odd blocks: streaming must not show
				out = r.Write(out, in[i:min(i+998, len(in))])
			}
			out = r.Flush(out)
			if len(out) != target*channels {
				t.Errorf("%d Hz, %d channels: %d samples, want %d", rate, channels, len(out), target*channels)
			}
			worst := 0.0
			for i := 100 * channels; i < len(out)-100*channels; i++ {
				want := math.Sin(2 * math.Pi * 1000 * float64(i/channels) / target)
				worst = max(worst, math.Abs(out[i]-want))
			}
			if worst > 1e-3 {
				t.Errorf("%d Hz, %d channels: a 1 kHz tone is off by %g", rate, channels, worst)
			}
		}
	}
}

func TestResamplerKeepsHighTonesOut(t *testing.T) {
	in := make([]float32, 44100)
	for i := range in {
		in[i] = float32(math.Sin(2 * math.Pi * 15000 * float64(i) / 44100))
	}
	r := NewResampler(44100, 22050, 1)
	out := r.Flush(r.Write(nil, in))
	peak := 0.0
	for _, v := range out[100 : len(out)-100] {
		peak = max(peak, math.Abs(v))
	}
	if peak > 1e-3 {
		t.Errorf("15 kHz comes through at %.1f dB, want below -60", 20*math.Log10(peak))
	}
}

func TestQuantile(t *testing.T) {
	for _, c := range []struct {
		x       []float64
		q, want float64
	}{
		{nil, 0.5, 0}, {[]float64{3}, 0.9, 3}, {[]float64{3, 1, 2}, 0.5, 2},
		{[]float64{4, 1, 3, 2}, 0.5, 2.5}, {[]float64{0, 10}, 0.25, 2.5},
	} {
		if got := Quantile(c.x, c.q); got != c.want {
			t.Errorf("Quantile(%v, %v) = %v, want %v", c.x, c.q, got, c.want)
		}
	}
}

func BenchmarkSpectrumSum(b *testing.B) {
	x, dst := noise(2048, 1), make([]float64, 513)
	s := NewSpectrum(1024)
	for b.Loop() {
		s.Sum(dst, x, 2)
	}
}

func BenchmarkResampleMinuteStereo(b *testing.B) {
	in := make([]float32, 44100*2)
	for b.Loop() {
		r := NewResampler(44100, 22050, 2)
		out := make([]float64, 0, 50000)
		for range 60 {
			out = r.Write(out[:0], in)
		}
	}
}
