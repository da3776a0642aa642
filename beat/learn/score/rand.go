package score

import "math/rand/v2"

// Rand is a seeded source of choices.
type Rand struct{ *rand.Rand }

// NewRand gives the same choices for the same seed and stream.
func NewRand(seed, stream uint64) Rand { return Rand{rand.New(rand.NewPCG(seed, stream))} }

// Chance is true with probability p.
func (r Rand) Chance(p float64) bool { return r.Float64() < p }

// Between is uniform in [lo, hi).
func (r Rand) Between(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }

// Pick takes one of the choices.
func Pick[T any](r Rand, from []T) T { return from[r.IntN(len(from))] }

// Weighted takes an index with probability proportional to its weight.
func (r Rand) Weighted(weight []float64) int {
	sum := 0.0
	for _, w := range weight {
		sum += w
	}
	x := r.Float64() * sum
	for i, w := range weight {
		if x -= w; x < 0 {
			return i
		}
	}
	return len(weight) - 1
}
