package main

import (
	"bytes"
	"fmt"
	"math"
)

// example are the signs of a track and whether its beats are right.
type example struct {
	id    string
	signs []float64 // the constant first
	right bool
}

const fewest = 8 // counts without which there is no claim

// examples are those of the tracks that have a beat: signs are the mean over
// the counts, since few tracks have more than one stretch.
func examples(tracks []heard) []example {
	var out []example
	for _, h := range tracks {
		if len(h.truth) < fewest {
			continue
		}
		var signs []float64
		n := 0.0
		for _, c := range h.claims {
			counts := float64(len(c.Beats))
			values := c.Signs.Values()
			if signs == nil {
				signs = make([]float64, len(values))
			}
			for i, v := range values {
				signs[i] += counts * v
			}
			n += counts
		}
		if n < fewest {
			continue
		}
		for i := range signs {
			signs[i] /= n
		}
		out = append(out, example{h.id, signs, h.right()})
	}
	return out
}

const steps = 30 // of Newton's method; it settles sooner

// fit is logistic regression with a ridge on the standardised weights, by
// Newton's method.
//
// Ref: Hastie, Tibshirani & Friedman 2009, "The Elements of Statistical
// Learning", 4.4 (from memory); that the curve makes probabilities: Platt 1999.
func fit(all []example, ridge float64) []float64 {
	mean, scale := spread(all)
	n := len(mean)
	w := make([]float64, n)
	for range steps {
		slope := make([]float64, n)
		curve := make([][]float64, n)
		for i := range curve {
			curve[i] = make([]float64, n)
			curve[i][i] = math.SmallestNonzeroFloat64
			if i > 0 {
				curve[i][i] = ridge
				slope[i] = -ridge * w[i]
			}
		}
		for _, e := range all {
			x := standard(e.signs, mean, scale)
			p := probability(x, w)
			miss := -p
			if e.right {
				miss = 1 - p
			}
			for i := range x {
				slope[i] += miss * x[i]
				for j := range x {
					curve[i][j] += p * (1 - p) * x[i] * x[j]
				}
			}
		}
		for i, d := range solve(curve, slope) {
			w[i] += max(-1, min(1, d))
		}
	}
	for i := 1; i < n; i++ {
		w[i] /= scale[i]
		w[0] -= w[i] * mean[i]
	}
	return w
}

// probability is the logistic curve of what the weights make of signs.
func probability(signs, weights []float64) float64 {
	logOdds := 0.0
	for i, v := range signs {
		logOdds += v * weights[i]
	}
	return 1 / (1 + math.Exp(-logOdds))
}

// spread is the mean and standard deviation of each sign; those of the
// constant leave it alone.
func spread(all []example) (mean, scale []float64) {
	n := len(all[0].signs)
	mean, scale = make([]float64, n), make([]float64, n)
	for i := 1; i < n; i++ {
		for _, e := range all {
			mean[i] += e.signs[i] / float64(len(all))
		}
		for _, e := range all {
			d := e.signs[i] - mean[i]
			scale[i] += d * d / float64(len(all))
		}
		scale[i] = math.Sqrt(scale[i])
	}
	scale[0] = 1
	return mean, scale
}

func standard(signs, mean, scale []float64) []float64 {
	x := make([]float64, len(signs))
	for i, v := range signs {
		x[i] = (v - mean[i]) / scale[i]
	}
	return x
}

// solve is x of a x = b, by Gauss-Jordan elimination; a is symmetric and
// positive.
func solve(a [][]float64, b []float64) []float64 {
	for i := range a {
		for j := range a {
			if j == i {
				continue
			}
			f := a[j][i] / a[i][i]
			for k := range a {
				a[j][k] -= f * a[i][k]
			}
			b[j] -= f * b[i]
		}
	}
	for i := range b {
		b[i] /= a[i][i]
	}
	return b
}

// source is the weights as the Go file that holds them.
func source(w []float64) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `package beat

// trustWeights are the log-odds that each sign adds: a constant, the log-odds of
// the mean activation on the counts, the share of it that falls on them, and the
// logarithm of the odds of the reading. Fitted by beat/learn/trust.
var trustWeights = [...]float64{%.3f, %.3f, %.3f, %.3f}
`, w[0], w[1], w[2], w[3])
	return b.Bytes()
}
