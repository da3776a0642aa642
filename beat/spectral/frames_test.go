package spectral

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestFrames(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for _, n := range []int{0, 1, sheetFrames - 1, sheetFrames, sheetFrames + 1, 2*sheetFrames + 7} {
		bands := []float64{100, 200, 400}
		level := make([]float32, n*len(bands))
		for i := range level {
			level[i] = float32(14 * r.Float64())
		}
		f := NewFrames(50, bands, level)
		check := func(what string, within float64) {
			t.Helper()
			if f.Len() != n {
				t.Fatalf("%s: %d frames, want %d", what, f.Len(), n)
			}
			for i, v := range f.Rows(0, n) {
				if d := math.Abs(float64(v - level[i])); d > within {
					t.Fatalf("%s: level %d of %d frames is %g, want %g", what, i, n, v, level[i])
				}
				if at := f.At(i / len(bands))[i%len(bands)]; at != v {
					t.Fatalf("%s: At says %g, Rows %g", what, at, v)
				}
			}
		}
		check("as recorded", 0)
		f.Pack()
		check("packed", packStep/2+1e-6)
	}
}
