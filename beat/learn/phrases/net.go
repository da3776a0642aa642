package main

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync"

	"onphrase/beat/phrase"
)

const (
	units     = 8    // hidden, of each of the networks that are made one
	epochs    = 40   // passes over the songs
	batch     = 16   // songs a step
	rate      = 0.01 // of the first step
	netRidge  = 1e-3 // how strongly weights are drawn to 0, for each song
	floorPart = 0.5  // of the median deviation of a clue among the songs
	deaf      = 0.2  // share of the clues that a lesson is taught without
	noisy     = 0.3  // deviation of what is added to each input
)

// lesson is a song by its bars.
type lesson struct {
	clues  [][]float64 // by clue
	inputs [][]float64 // by bar
	known  []float64   // log-odds of what is known
}

// floors are the least deviations to measure each clue by.
func floors(all []lesson) []float64 {
	out := make([]float64, phrase.ClueCount)
	for k := range out {
		var spread []float64
		for _, l := range all {
			_, d := phrase.Spread(l.clues[k])
			spread = append(spread, d)
		}
		slices.Sort(spread)
		out[k] = floorPart * spread[len(spread)/2]
	}
	return out
}

// trainAll trains a network for each of some groups of lessons on all groups but
// that one, and makes them one: what only one maker of songs does is not
// known to all of them.
func trainAll(groups [][]lesson, seed uint64, hidden int) *phrase.Network {
	floor := floors(slices.Concat(groups...))
	networks := make([]*phrase.Network, len(groups))
	var wait sync.WaitGroup
	for i := range groups {
		wait.Go(func() {
			others := slices.Concat(slices.Concat(groups[:i]...), slices.Concat(groups[i+1:]...))
			if len(groups) == 1 {
				others = groups[0]
			}
			networks[i] = train(others, floor, seed+uint64(i), hidden)
		})
	}
	wait.Wait()
	return together(networks)
}

// train finds the network that makes the true lists of phrases likeliest, by
// stochastic steps.
func train(all []lesson, floor []float64, seed uint64, hidden int) *phrase.Network {
	r := rand.New(rand.NewPCG(seed, 7))
	n := &phrase.Network{Floor: floor}
	all = slices.Clone(all)
	for i := range all {
		all[i].inputs = n.Inputs(all[i].clues)
	}
	inputs := phrase.InputCount(phrase.ClueCount)
	w := make([]float64, inputs+hidden*(inputs+1))
	w[inputs-1] = -3
	for i := inputs; i < len(w); i++ {
		w[i] = 0.3 * r.NormFloat64() / math.Sqrt(float64(inputs))
		if i >= len(w)-hidden {
			w[i] *= 10
		}
	}
	adam := newAdam(len(w))
	steps := (len(all) + batch - 1) / batch
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	for step := range epochs * steps {
		if step%steps == 0 {
			r.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
		}
		from := step % steps * batch
		chosen := order[from:min(len(order), from+batch)]
		view(n, w, hidden)
		g := gradient(n, all, chosen, len(w), r)
		for i := range g {
			if i != inputs-1 {
				g[i] -= netRidge * w[i] * float64(len(chosen))
			}
		}
		adam.climb(w, g, rate*(1-float64(step)/float64(epochs*steps)))
	}
	view(n, w, hidden)
	return n
}

// together is the network whose log-odds are the mean of those of some with the
// same floors: what one of them takes for a rule by chance the others do not.
//
// Ref: Hansen & Salamon 1990, "Neural network ensembles" (from memory).
func together(all []*phrase.Network) *phrase.Network {
	out := &phrase.Network{Floor: all[0].Floor, Linear: make([]float64, len(all[0].Linear))}
	for _, n := range all {
		for i, v := range n.Linear {
			out.Linear[i] += v / float64(len(all))
		}
		out.Hidden = append(out.Hidden, n.Hidden...)
		for _, v := range n.Out {
			out.Out = append(out.Out, v/float64(len(all)))
		}
	}
	return out
}

// view lays the weights of a network over w.
func view(n *phrase.Network, w []float64, hidden int) {
	inputs := phrase.InputCount(phrase.ClueCount)
	n.Linear, n.Hidden = w[:inputs], nil
	for h := range hidden {
		n.Hidden = append(n.Hidden, w[inputs*(h+1):inputs*(h+2)])
	}
	n.Out = w[inputs*(hidden+1):]
}

// gradient is that of the likelihood of the chosen songs.
func gradient(n *phrase.Network, all []lesson, chosen []int, size int, r *rand.Rand) []float64 {
	g := make([]float64, size)
	for _, i := range chosen {
		l := all[i]
		l.inputs = deafened(l.inputs, r)
		teach(n, l, g)
	}
	return g
}

// teach adds the gradient of one song to g: at the maximum the inputs at the
// starts that the chain expects are those at the true ones.
func teach(n *phrase.Network, l lesson, g []float64) {
	bars := len(l.inputs)
	odds, told, hidden := make([]float64, bars), make([]float64, bars), make([][]float64, bars)
	for i, input := range l.inputs {
		odds[i], hidden[i] = n.Odds(input)
		told[i] = odds[i] + l.known[i]
	}
	guess, truth := phrase.Chances(odds, false), phrase.Chances(told, false)
	inputs := phrase.InputCount(phrase.ClueCount)
	for i := 1; i < bars; i++ {
		d := truth[i] - guess[i]
		add(g[:inputs], l.inputs[i], d)
		for h, out := range n.Out {
			v := hidden[i][h]
			g[inputs*(len(n.Out)+1)+h] += d * v
			add(g[inputs*(h+1):inputs*(h+2)], l.inputs[i], d*out*(1-v*v))
		}
	}
}

func add(g, x []float64, scale float64) {
	if math.Abs(scale) < 1e-6 {
		return
	}
	for i, v := range x {
		g[i] += scale * v
	}
}

// adam is the state of the steps.
//
// Ref: Kingma & Ba 2015, "Adam: a method for stochastic optimization" (from
// memory).
type adam struct {
	mean, square []float64
	steps        int
}

func newAdam(n int) *adam { return &adam{mean: make([]float64, n), square: make([]float64, n)} }

// climb takes a step up the gradient.
func (a *adam) climb(w, g []float64, rate float64) {
	const memory, squaredMemory, tiny = 0.9, 0.99, 1e-8
	a.steps++
	m, s := 1-math.Pow(memory, float64(a.steps)), 1-math.Pow(squaredMemory, float64(a.steps))
	for i := range w {
		a.mean[i] = memory*a.mean[i] + (1-memory)*g[i]
		a.square[i] = squaredMemory*a.square[i] + (1-squaredMemory)*g[i]*g[i]
		w[i] += rate * a.mean[i] / m / (math.Sqrt(a.square[i]/s) + tiny)
	}
}

// deafened are the inputs without some of the clues, and with noise, so that no
// maker's habit is relied upon alone.
//
// Ref: Srivastava et al. 2014, "Dropout"; Bishop 1995, "Training with noise is
// equivalent to Tikhonov regularization" (both from memory).
func deafened(inputs [][]float64, r *rand.Rand) [][]float64 {
	gain := make([]float64, phrase.ClueCount)
	for k := range gain {
		if r.Float64() >= deaf {
			gain[k] = 1 / (1 - deaf)
		}
	}
	out := make([][]float64, len(inputs))
	for i, row := range inputs {
		out[i] = make([]float64, len(row))
		for j, v := range row[:len(row)-1] {
			out[i][j] = v*gain[j%len(gain)] + noisy*r.NormFloat64()
		}
		out[i][len(row)-1] = 1
	}
	return out
}
