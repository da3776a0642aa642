package tempo

import "math"

// octaves are the levels at which a repetition may show most.
var octaves = []float64{0.25, 0.5, 1, 2, 4}

// Clarity is how clearly the music of a stretch repeats with the period of its
// curve, or an octave of it: the mean strength over its windows. Music comes
// out from about 0.02 to 0.2, speech and noise below 0.01.
func (g *Tempogram) Clarity(s Stretch) float64 {
	sum, n := 0.0, 0.0
	for w, strength := range g.Strength {
		t := g.Centre + float64(w)*g.Hop
		if w > 0 && (t < s.From || t > s.To) {
			continue
		}
		best := 0.0
		for i, p := range g.Periods {
			for _, octave := range octaves {
				if math.Abs(p/(s.Curve.At(t)*octave)-1) < 2*spacing {
					best = max(best, strength[i])
				}
			}
		}
		sum += best
		n++
	}
	return sum / max(1, n)
}
