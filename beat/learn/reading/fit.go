package main

import (
	"math"
	"slices"
)

const (
	steps     = 400
	pace      = 0.05 // of the first step
	memory    = 0.9  // of the mean gradient, and
	memory2   = 0.999
	tiny      = 1e-8
	teachable = 0.75 // F of the best reading, without which a stretch teaches nothing
	right     = 0.7  // F of a reading that can be called right,
	nearBest  = 0.08 // and how far below the best it may be
	sharp     = 4    // power of F by which right readings share the target
)

// fit is multinomial logistic regression: the softmax over the readings of a
// stretch, with a ridge on the standardised weights, minimised by Adam.
//
// Ref: Kingma & Ba 2015, "Adam: a method for stochastic optimization".
func fit(all []example, ridge float64) []float64 {
	all = slices.DeleteFunc(slices.Clone(all), func(e example) bool { return slices.Max(e.f) < teachable })
	scale := deviations(all)
	w := make([]float64, len(scale))
	mean, square := make([]float64, len(w)), make([]float64, len(w))
	for step := 1; step <= steps; step++ {
		slope := gradient(all, w, scale, ridge)
		for j, g := range slope {
			mean[j] = memory*mean[j] + (1-memory)*g
			square[j] = memory2*square[j] + (1-memory2)*g*g
			m := mean[j] / (1 - math.Pow(memory, float64(step)))
			v := square[j] / (1 - math.Pow(memory2, float64(step)))
			w[j] -= pace * (1 - float64(step)/steps) * m / (math.Sqrt(v) + tiny)
		}
	}
	for j := range w {
		w[j] /= scale[j]
	}
	return w
}

// gradient of the loss by the standardised weights.
func gradient(all []example, w, scale []float64, ridge float64) []float64 {
	g := make([]float64, len(w))
	for j := range w {
		g[j] = 2 * ridge * w[j]
	}
	for _, e := range all {
		p, target := odds(e, w, scale), e.target()
		for i, clues := range e.clues {
			d := (p[i] - target[i]) / float64(len(all))
			for j, v := range clues {
				g[j] += d * v / scale[j]
			}
		}
	}
	return g
}

// odds are the probabilities that the weights give to the readings.
func odds(e example, w, scale []float64) []float64 {
	p := make([]float64, len(e.clues))
	for i, clues := range e.clues {
		for j, v := range clues {
			p[i] += w[j] * v / scale[j]
		}
	}
	top, sum := slices.Max(p), 0.0
	for i := range p {
		p[i] = math.Exp(p[i] - top)
		sum += p[i]
	}
	for i := range p {
		p[i] /= sum
	}
	return p
}

// target shares the certainty among the readings that are right.
func (e example) target() []float64 {
	least := max(right, slices.Max(e.f)-nearBest)
	t, sum := make([]float64, len(e.f)), 0.0
	for i, f := range e.f {
		if f >= least {
			t[i] = math.Pow(f, sharp)
			sum += t[i]
		}
	}
	for i := range t {
		t[i] /= sum
	}
	return t
}

// deviations are the standard deviations of the clues.
func deviations(all []example) []float64 {
	n := 0.0
	sum, square := make([]float64, len(all[0].clues[0])), make([]float64, len(all[0].clues[0]))
	for _, e := range all {
		for _, clues := range e.clues {
			n++
			for j, v := range clues {
				sum[j] += v
				square[j] += v * v
			}
		}
	}
	for j := range sum {
		sum[j] = math.Sqrt(max(0, square[j]/n-sum[j]*sum[j]/n/n)) + tiny
	}
	return sum
}

// goodness is the mean F of the readings that the weights choose.
func goodness(all []example, w []float64) float64 {
	ones := make([]float64, len(w))
	for j := range ones {
		ones[j] = 1
	}
	sum := 0.0
	for _, e := range all {
		p := odds(e, w, ones)
		sum += e.f[slices.Index(p, slices.Max(p))]
	}
	return sum / float64(len(all))
}

const folds = 5

// crossValidated is the mean F of the readings that weights choose that were
// fitted to the other pieces.
func crossValidated(all []example, ridge float64) float64 {
	sum := 0.0
	for fold := range folds {
		var teach, test []example
		piece, last := -1, ""
		for _, e := range all {
			if e.piece != last {
				piece, last = piece+1, e.piece
			}
			if piece%folds == fold {
				test = append(test, e)
			} else {
				teach = append(teach, e)
			}
		}
		if len(test) > 0 {
			sum += goodness(test, fit(teach, ridge)) * float64(len(test))
		}
	}
	return sum / float64(len(all))
}
