package ear

import (
	"encoding/binary"
	"math"
	"os"
	"slices"
	"testing"

	"onphrase/beat/spectral"
)

// The front-end is part of what was trained: were it changed, the network would
// have to be trained anew (beat/learn/README.md).
//
// Ref: testdata/levels.f32, the same levels by numpy (`train.py golden`).
func TestFrontEnd(t *testing.T) {
	sound := readFile(t, "testdata/sound.wav")[44:]
	x := make([]float64, len(sound)/2)
	for i := range x {
		x[i] = float64(int16(binary.LittleEndian.Uint16(sound[2*i:]))) / 32768
	}
	rec := spectral.NewRecorder(1)
	rec.Write(x)
	f, _, _ := rec.Finish()
	want := readFloats(t, "testdata/levels.f32")
	if len(f.Bands) != bands || f.FPS != 50 {
		t.Fatalf("%d bands at %g frames/s, the ear knows %d at 50", len(f.Bands), f.FPS, bands)
	}
	levels := f.Rows(0, f.Len())
	if n := min(len(want), len(levels)); n < 100*bands {
		t.Fatalf("%d levels here, %d by numpy", len(levels), len(want))
	}
	worst := 0.0
	for i := range min(len(want), len(levels)) {
		worst = max(worst, math.Abs(float64(levels[i]-want[i])))
	}
	if worst > 1e-5 {
		t.Errorf("levels are off by %g, want 1e-5 at most: spectral's front-end is not the one the ear was trained with",
			worst)
	}
}

// Ref: testdata/activations.f32, PyTorch's answer to the same levels
// (`train.py golden`), every seventh frame.
func TestActivationsAgreeWithPyTorch(t *testing.T) {
	a := Listen(frames(3000))
	want := readFloats(t, "testdata/activations.f32")
	worst := 0.0
	for i := 0; i < len(want)/2; i++ {
		worst = max(worst, math.Abs(a.Beat[7*i]-float64(want[2*i])), math.Abs(a.One[7*i]-float64(want[2*i+1])))
	}
	t.Logf("greatest difference %.2g", worst)
	if worst > 1e-4 {
		t.Errorf("activations are off by %g, want 1e-4 at most", worst)
	}
}

func TestBlocksDoNotShow(t *testing.T) {
	f := frames(5001)
	whole := trained().listen(f, 1<<20)
	for _, block := range []int{997, 2048} {
		parts := trained().listen(f, block)
		if !slices.Equal(whole.Beat, parts.Beat) || !slices.Equal(whole.One, parts.One) {
			t.Errorf("blocks of %d frames change the answer", block)
		}
	}
}

func TestListenRepeats(t *testing.T) {
	a, b := Listen(frames(700)), Listen(frames(700))
	if !slices.Equal(a.Beat, b.Beat) || !slices.Equal(a.One, b.One) {
		t.Error("the same sound gives another answer")
	}
}

func TestShortTracks(t *testing.T) {
	for _, n := range []int{0, 1, 2, 3, 4, 5, 50} {
		a := Listen(frames(n))
		if len(a.Beat) != n || len(a.One) != n {
			t.Errorf("%d frames: %d and %d answers", n, len(a.Beat), len(a.One))
		}
		for i := range a.Beat {
			if !(a.Beat[i] >= 0 && a.Beat[i] <= 1 && a.One[i] >= 0 && a.One[i] <= 1) {
				t.Errorf("%d frames: activation %g, %g outside 0-1", n, a.Beat[i], a.One[i])
			}
		}
	}
}

func TestReach(t *testing.T) {
	const n, at = 2*reach + 400, reach + 200
	a, f := Listen(frames(n)), frames(n)
	for b := range bands {
		f.At(at)[b] += 3
	}
	b := Listen(f)
	for i := range a.Beat {
		if changed := a.Beat[i] != b.Beat[i] || a.One[i] != b.One[i]; changed && (i < at-reach || i > at+reach) {
			t.Fatalf("frame %d hears frame %d, %d away; reach is %d", i, at, i-at, reach)
		}
	}
}

func TestParse(t *testing.T) {
	if len(weightsFile) > 300_000 {
		t.Errorf("the weights take %d bytes, want at most 300,000", len(weightsFile))
	}
	for name, file := range map[string][]byte{
		"empty": nil, "text": []byte("hello, this is no weights file"), "short": weightsFile[:len(weightsFile)-1],
		"long": append(slices.Clone(weightsFile), 0), "header": weightsFile[:6],
	} {
		if _, err := ListenWith(file, frames(10)); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// Ref: IEEE 754-2008, binary16.
func TestHalf(t *testing.T) {
	for h, want := range map[uint16]float32{0: 0, 0x3C00: 1, 0xC000: -2, 0x7BFF: 65504, 0x0400: 1.0 / 16384,
		0x0001: 1.0 / (1 << 24), 0x8001: -1.0 / (1 << 24), 0x3555: 0.33325195} {
		if got := half(h); got != want {
			t.Errorf("half(%#04x) = %g, want %g", h, got, want)
		}
	}
}

func frames(n int) *spectral.Frames {
	return spectral.NewFrames(50, make([]float64, bands), pseudo(n))
}

func readFile(t *testing.T, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func readFloats(t *testing.T, path string) []float32 {
	b := readFile(t, path)
	x := make([]float32, len(b)/4)
	for i := range x {
		x[i] = math.Float32frombits(binary.LittleEndian.Uint32(b[4*i:]))
	}
	return x
}

// Ref: math.Expm1.
func TestELU(t *testing.T) {
	worst := 0.0
	for v := float32(-1e-6); v > -100; v *= 1.0003 {
		x := []float32{v, -v}
		elu(x)
		worst = max(worst, math.Abs(float64(x[0])/math.Expm1(float64(v))-1))
		if x[1] != -v {
			t.Fatalf("%g becomes %g", -v, x[1])
		}
	}
	if worst > 1e-6 {
		t.Errorf("off by a share of %.2g, want 1e-6 at most", worst)
	}
}
