package grid

import "math"

const (
	reach      = 0.045 // how far from its beat a hit may begin [s]
	riseAfter  = 3     // steps after the attack, and
	riseBefore = 4     // before it, whose energy is compared
	leastRise  = 0.7   // in log-energy: what counts as a hit
	mostRise   = 4.0   // what counts fully
	floor      = 1e-5  // energy below the loudest that is silence, relative
)

// Hit is what sounds at a beat.
type Hit struct {
	Time   float64 // of the attack [s]
	Weight float64 // 0 (nothing begins here) to 1 (a clear attack)
}

// Hits finds the attack at each beat [s]: the steepest rise of the energy,
// given in steps at fps to the second.
func Hits(beats []float64, energy []float32, fps float64) []Hit {
	loudest := float32(0)
	for _, e := range energy {
		loudest = max(loudest, e)
	}
	silence := floor*float64(loudest) + 1e-30
	hits := make([]Hit, len(beats))
	for k, t := range beats {
		hits[k] = hitAt(energy, silence, t, fps)
	}
	return hits
}

func hitAt(energy []float32, silence, t, fps float64) Hit {
	hit := Hit{Time: t}
	from := max(riseBefore, int(math.Ceil((t-reach)*fps)))
	to := min(len(energy)-riseAfter, int((t+reach)*fps))
	if from > to {
		return hit
	}
	around := energy[from-riseBefore : to+riseAfter]
	level := make([]float64, len(around))
	for i, e := range around {
		level[i] = math.Log(float64(e) + silence)
	}
	best := leastRise
	for i := riseBefore; i+riseAfter <= len(level); i++ {
		rise := average(level[i:i+riseAfter]) - average(level[i-riseBefore:i])
		if rise > best {
			best = rise
			hit = Hit{Time: float64(from-riseBefore+i) / fps, Weight: min(1, rise/mostRise)}
		}
	}
	return hit
}

func average(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

// Agreement is how well each hit keeps to its beat [s]: its weight where it
// falls on it, less the further off it is, and minus its weight at the worst.
func Agreement(beats []float64, hits []Hit) []float64 {
	out := make([]float64, len(hits))
	for k, h := range hits {
		off := (h.Time - beats[k]) / jitter
		out[k] = h.Weight * max(-1, 1-off*off)
	}
	return out
}
