package main

import (
	"bytes"
	"fmt"
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

// groups are the clues in the order of reading.Hear.
var groups = []struct {
	name string
	n    int
}{
	{"kick", 10}, {"bass", 10}, {"mid", 10}, {"snare", 10}, {"hat", 10}, {"novelty", 10},
	{"repetition after 1, 2, 3, 4, 6, 8 beats", 6}, {"tempo: octaves from the usual, squared, above, below", 4},
}

// source is the weights as the Go file that holds them.
func source(w []float64) []byte {
	var b bytes.Buffer
	b.WriteString(`package reading

// weights are the log-odds that each clue of Hear adds, fitted by multinomial
// logistic regression on music rendered for the purpose (beat/learn/reading).
// No track that accuracy is reported on was among it.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
`)
	for _, g := range groups {
		b.WriteString("\t")
		for _, v := range w[:g.n] {
			fmt.Fprintf(&b, "%.3f, ", v)
		}
		fmt.Fprintf(&b, "// %s\n", g.name)
		w = w[g.n:]
	}
	b.WriteString("}\n")
	return b.Bytes()
}
