package score

import (
	"fmt"
	"io"
	"math"
)

// Claim is a trust, 0-1, and how right it was, 0-1.
type Claim struct{ Trust, Right float64 }

// TrustBins part trusts for the tables of reliability.
var TrustBins = []float64{0, 0.1, 0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 1}

// Bin is what became of the claims of a trust in [From, To), the last bin with
// its end.
type Bin struct {
	From, To float64
	Claims   int
	Trust    float64 // mean
	Right    float64 // mean
}

// Reliability sorts claims by trust; bins without any are left out. For a
// calibrated trust the means of a bin are alike. off is the expected calibration
// error: their mean difference, weighted by the number of claims.
//
// Ref: the reliability diagram of DeGroot & Fienberg 1983; the error after
// Naeini, Cooper & Hauskrecht 2015 (both from memory).
func Reliability(bounds []float64, claims []Claim) (bins []Bin, off float64) {
	for i := 0; i+1 < len(bounds); i++ {
		b := Bin{From: bounds[i], To: bounds[i+1]}
		for _, c := range claims {
			if c.Trust >= b.From && (c.Trust < b.To || i+2 == len(bounds)) {
				b.Claims++
				b.Trust += c.Trust
				b.Right += c.Right
			}
		}
		if b.Claims == 0 {
			continue
		}
		n := float64(b.Claims)
		b.Trust, b.Right = b.Trust/n, b.Right/n
		bins = append(bins, b)
		off += n / float64(len(claims)) * math.Abs(b.Trust-b.Right)
	}
	return bins, off
}

// WriteReliability prints a line a bin: number, mean trust, mean of how right;
// then the expected calibration error. Without claims it prints nothing.
func WriteReliability(w io.Writer, bounds []float64, claims []Claim) {
	bins, off := Reliability(bounds, claims)
	for _, b := range bins {
		fmt.Fprintf(w, "  %.2f - %.2f  %5d   %.2f   %.2f\n", b.From, b.To, b.Claims, b.Trust, b.Right)
	}
	if len(claims) > 0 {
		fmt.Fprintf(w, "  expected calibration error %.3f\n", off)
	}
}

// LogLoss is the mean negative log-likelihood of what became of claims, were the
// log-odds of each multiplied by slope: least at 1 where trust is neither too
// sure nor too shy.
//
// Ref: the calibration slope of Cox 1958, "Two further applications of a model
// for binary regression" (Biometrika 45; from memory).
func LogLoss(claims []Claim, slope float64) float64 {
	const most = 0.999
	sum := 0.0
	for _, c := range claims {
		p := min(most, max(1-most, c.Trust))
		p = 1 / (1 + math.Exp(-slope*math.Log(p/(1-p))))
		sum -= c.Right*math.Log(p) + (1-c.Right)*math.Log(1-p)
	}
	return sum / float64(max(1, len(claims)))
}
