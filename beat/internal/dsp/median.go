package dsp

import "slices"

// Median is the middle of x, 0 when x is empty. x is not changed.
func Median(x []float64) float64 { return Quantile(x, 0.5) }

// Quantile is the value below which the share q (0-1) of x lies, linearly
// interpolated; 0 when x is empty. x is not changed.
func Quantile(x []float64, q float64) float64 {
	if len(x) == 0 {
		return 0
	}
	s := slices.Clone(x)
	slices.Sort(s)
	at := q * float64(len(s)-1)
	i := min(int(at), len(s)-1)
	j := min(i+1, len(s)-1)
	return s[i] + (at-float64(i))*(s[j]-s[i])
}
