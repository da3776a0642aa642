package main

import "math"

// climb walks up a concave function from a point, by its gradient alone.
//
// Ref: Kingma & Ba 2015, "Adam: a method for stochastic optimization" (from
// memory), with a step that shrinks to nothing.
func climb(from []float64, gradient func(x []float64) []float64) []float64 {
	const (
		steps         = 300
		step          = 0.1
		memory        = 0.8
		squaredMemory = 0.95
		tiny          = 1e-9
	)
	x, mean, square := append([]float64{}, from...), make([]float64, len(from)), make([]float64, len(from))
	for n := range steps {
		rate := step * (1 - float64(n)/steps)
		for i, g := range gradient(x) {
			mean[i] = memory*mean[i] + (1-memory)*g
			square[i] = squaredMemory*square[i] + (1-squaredMemory)*g*g
			x[i] += rate * mean[i] / math.Sqrt(square[i]+tiny)
		}
	}
	return x
}

// ridge is how strongly weights are drawn to 0: as by one unit of evidence for
// a hundred tracks.
const ridge = 0.01
