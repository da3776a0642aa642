package main

import (
	"fmt"
	"io"
)

// claim is a trust and whether it was right, 0 or 1.
type claim struct{ trust, right float64 }

// bins part trusts for the tables of reliability.
var bins = []float64{0, 0.1, 0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 1}

// reliability prints, for trusts of each bin, how many there are, their mean and
// the share of them that was right: for a calibrated trust the two are alike. The
// last line is the expected calibration error, the mean difference weighted
// by number.
//
// Ref: the reliability diagram of DeGroot & Fienberg 1983; the error after
// Naeini, Cooper & Hauskrecht 2015 (both from memory).
func reliability(w io.Writer, list []claim) {
	off := 0.0
	for i := 0; i+1 < len(bins); i++ {
		var n, trust, right float64
		for _, c := range list {
			if c.trust >= bins[i] && (c.trust < bins[i+1] || i+2 == len(bins)) {
				n++
				trust += c.trust
				right += c.right
			}
		}
		if n == 0 {
			continue
		}
		off += max(trust-right, right-trust)
		fmt.Fprintf(w, "  %.2f - %.2f  %5.0f   %.2f   %.2f\n", bins[i], bins[i+1], n, trust/n, right/n)
	}
	if len(list) > 0 {
		fmt.Fprintf(w, "  expected calibration error %.3f\n", off/float64(len(list)))
	}
}
