package grid

import "math"

// point is a value y at a place x that weighs w.
type point struct{ x, y, w float64 }

// swarm is a number of points about a line.
type swarm []point

// place is where the k-th of n lies, from -1 to 1.
func place(k, n int) float64 { return 2*float64(k)/float64(n-1) - 1 }

// add takes in the k-th of n hits that is off by so much [s], if it is near.
func (s *swarm) add(k, n int, off, weight float64) {
	if weight > 0 && math.Abs(off) <= nearLine {
		*s = append(*s, point{place(k, n), off, weight})
	}
}

// square is the mean square of a figure of the points.
func (s swarm) square(of func(point) float64) float64 {
	sum, weight := 0.0, 0.0
	for _, p := range s {
		v := of(p)
		sum += p.w * v * v
		weight += p.w
	}
	return sum / max(weight, math.SmallestNonzeroFloat64)
}

// cubic is a polynomial by its coefficients, the constant first.
type cubic [4]float64

func (c cubic) at(x float64) float64 { return c[0] + x*(c[1]+x*(c[2]+x*c[3])) }

// fitCubic is the cubic of least squares: Gauss-Jordan elimination of its
// normal equations, which are positive where there are more places than
// coefficients.
func fitCubic(s swarm) cubic {
	const n = len(cubic{})
	var m [n][n + 1]float64
	for _, p := range s {
		powers := [n]float64{1, p.x, p.x * p.x, p.x * p.x * p.x}
		for i := range n {
			for j := range n {
				m[i][j] += p.w * powers[i] * powers[j]
			}
			m[i][n] += p.w * powers[i] * p.y
		}
	}
	for i := range n {
		if m[i][i] <= 0 {
			continue
		}
		for j := range n {
			if j == i {
				continue
			}
			f := m[j][i] / m[i][i]
			for k := i; k <= n; k++ {
				m[j][k] -= f * m[i][k]
			}
		}
	}
	var c cubic
	for i := range n {
		if m[i][i] > 0 {
			c[i] = m[i][n] / m[i][i]
		}
	}
	return c
}
