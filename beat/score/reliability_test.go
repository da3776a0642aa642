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

// Of claims of 0.8 that are right four times in five, no other slope tells more;
// at the claims themselves the loss is the entropy of a coin of 0.8.
func TestLogLoss(t *testing.T) {
	var claims []Claim
	for i := range 100 {
		c := Claim{Trust: 0.8, Right: 1}
		if i%5 == 0 {
			c.Right = 0
		}
		claims = append(claims, c)
	}
	want := -0.8*math.Log(0.8) - 0.2*math.Log(0.2)
	if got := LogLoss(claims, 1); math.Abs(got-want) > 1e-9 {
		t.Errorf("loss %v, want %v", got, want)
	}
	for _, slope := range []float64{0.5, 0.9, 1.1, 2} {
		if LogLoss(claims, slope) <= want {
			t.Errorf("slope %v tells more than 1", slope)
		}
	}
}
