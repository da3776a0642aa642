package tempo

import (
	"math"
	"slices"
)

const (
	// glideCost is what a change of tempo costs from one window to the next,
	// per relative change, in units of Strength.
	glideCost = 1.0
	// jumpCost is the most that any change costs: a new song in a mix.
	jumpCost = 0.35
	// glideLimit parts a gliding tempo from a jump, relative.
	glideLimit = 0.04
)

// Curve is a period that changes with time.
type Curve struct {
	Period []float64 // [s], one for each window
	Hop    float64   // from one window to the next [s]
	Centre float64   // of the first window [s]
}

// Steady is the curve of one period [s].
func Steady(period float64) Curve { return Curve{Period: []float64{period}, Hop: 1} }

// At is the period at a time [s].
func (c Curve) At(t float64) float64 {
	pos := (t - c.Centre) / c.Hop
	last := len(c.Period) - 1
	i := int(math.Floor(pos))
	if i < 0 || i >= last {
		return c.Period[min(max(i, 0), last)]
	}
	before, after := c.Period[i], c.Period[i+1]
	if math.Abs(math.Log(after/before)) > glideLimit { // a jump: take the nearer
		return c.Period[int(math.Round(pos))]
	}
	return before + (after-before)*(pos-float64(i))
}

// Times is the curve with all periods multiplied.
func (c Curve) Times(factor float64) Curve {
	d := c
	d.Period = slices.Clone(c.Period)
	for i := range d.Period {
		d.Period[i] *= factor
	}
	return d
}

// Path is the most strongly repeating curve that changes little.
func (g *Tempogram) Path() Curve {
	n := len(g.Periods)
	score := slices.Clone(g.Strength[0])
	from := make([][]int, len(g.Strength))
	for w := 1; w < len(g.Strength); w++ {
		from[w] = make([]int, n)
		next := make([]float64, n)
		for i := range next {
			best := math.Inf(-1)
			for j, s := range score {
				cost := min(jumpCost, glideCost*math.Abs(math.Log(g.Periods[i]/g.Periods[j])))
				if v := s - cost; v > best {
					best, from[w][i] = v, j
				}
			}
			next[i] = best + g.Strength[w][i]
		}
		score = next
	}
	c := Curve{Period: make([]float64, len(g.Strength)), Hop: g.Hop, Centre: g.Centre}
	i := 0
	for j, s := range score {
		if s > score[i] {
			i = j
		}
	}
	for w := len(g.Strength) - 1; w >= 0; w-- {
		c.Period[w] = g.refine(w, g.Periods[i])
		if w > 0 {
			i = from[w][i]
		}
	}
	return c
}
