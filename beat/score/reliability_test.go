package score

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Worked by hand: four claims at .6, of which three are right, and one of 1 that
// is wrong: (4 x .15 + 1 x 1) / 5.
func TestReliability(t *testing.T) {
	claims := []Claim{{0.6, 1}, {0.6, 1}, {0.6, 1}, {0.6, 0}, {1, 0}}
	bins, off := Reliability([]float64{0, 0.5, 0.8, 1}, claims)
	want := []Bin{{0.5, 0.8, 4, 0.6, 0.75}, {0.8, 1, 1, 1, 0}}
	if d := cmp.Diff(want, bins, cmpopts.EquateApprox(0, 1e-12)); d != "" {
		t.Error(d)
	}
	if math.Abs(off-0.32) > 1e-12 {
		t.Errorf("calibration error %v, want 0.32", off)
	}
}
