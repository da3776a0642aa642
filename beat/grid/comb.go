package grid

import "math"

const (
	onComb     = 0.025 // how far a line may lie from the half counts of a comb to be on it [s]
	samePeriod = 0.003 // how unlike the periods of two lines on one comb may be, relative
	fewestOn   = 8     // beats of a line that can tell
)

// Comb is a row of half counts of one period: the k-th at Start + k·Half [s].
type Comb struct{ Start, Half float64 }

// CombOf is the comb through straight beats [s], its half count 0 the first.
func CombOf(beats []float64) Comb {
	var f lineFit
	for i, t := range beats {
		f.add(2*float64(i), t)
	}
	return f.comb()
}

// At is the time of half count k [s].
func (c Comb) At(k int) float64 { return c.Start + float64(k)*c.Half }

// Nearest is the half count nearest to a time [s].
func (c Comb) Nearest(t float64) int { return int(math.Round((t - c.Start) / c.Half)) }

// Off is how far a time is from its nearest half count [s].
func (c Comb) Off(t float64) float64 { return t - c.At(c.Nearest(t)) }

// Holds reports whether straight beats [s] are counts of the comb, on the first
// half of them or on the other.
func (c Comb) Holds(beats []float64) bool {
	n := len(beats)
	if n < fewestOn {
		return false
	}
	period := (beats[n-1] - beats[0]) / float64(n-1)
	if math.Abs(math.Log(period/(2*c.Half))) > samePeriod {
		return false
	}
	return math.Abs(c.Off(beats[0])) <= onComb && math.Abs(c.Off(beats[n-1])) <= onComb &&
		c.Nearest(beats[n-1])-c.Nearest(beats[0]) == 2*(n-1)
}

// Through is the comb through several rows of beats that it holds.
func (c Comb) Through(rows [][]float64) Comb {
	var f lineFit
	for _, beats := range rows {
		k := c.Nearest(beats[0])
		for i, t := range beats {
			f.add(float64(k+2*i), t)
		}
	}
	return f.comb()
}

// lineFit is a line of least squares.
type lineFit struct{ n, x, t, xx, xt float64 }

func (f *lineFit) add(x, t float64) {
	f.n, f.x, f.t, f.xx, f.xt = f.n+1, f.x+x, f.t+t, f.xx+x*x, f.xt+x*t
}

func (f lineFit) comb() Comb {
	half := (f.n*f.xt - f.x*f.t) / (f.n*f.xx - f.x*f.x)
	return Comb{Start: (f.t - half*f.x) / f.n, Half: half}
}
