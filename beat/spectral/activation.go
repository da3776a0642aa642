package spectral

import "math"

const (
	evenOver    = 4.0  // [s] over which a band's loudness is evened out
	evenFloor   = 0.1  // of the band's whole-track level: quieter stretches stay quiet
	halfLikely  = 2.5  // evened-out onset strength that makes a beat as likely as 1 - 1/e
	leastLikely = 0.02 // activation where nothing happens
	mostLikely  = 0.98
)

// Activation says for each frame how likely a beat is there, 0-1, from onset
// curves of several bands, evened out. A learned model may take its place.
func Activation(bands [][]float64) []float64 {
	sum := make([]float64, len(bands[0]))
	for _, band := range bands {
		for i, v := range band {
			sum[i] += v / float64(len(bands))
		}
	}
	for i, v := range sum {
		sum[i] = min(mostLikely, max(leastLikely, 1-math.Exp(-v/halfLikely)))
	}
	return sum
}

// Even is the curves of o, evened out.
func (o *Onsets) Even() [][]float64 {
	bands := make([][]float64, len(o.Band))
	for i, b := range o.Band {
		bands[i] = EvenOut(b, o.FPS)
	}
	return bands
}

// EvenOut divides a curve at fps frames per second by its running root mean
// square, so that quiet and loud stretches count alike.
func EvenOut[T float32 | float64](x []T, fps float64) []float64 {
	sums := make([]float64, len(x)+1)
	for i, v := range x {
		sums[i+1] = sums[i] + float64(v)*float64(v)
	}
	overall := math.Sqrt(sums[len(x)] / max(1, float64(len(x))))
	half := int(evenOver / 2 * fps)
	y := make([]float64, len(x))
	for i, v := range x {
		from, to := max(0, i-half), min(len(x), i+half)
		level := math.Sqrt((sums[to] - sums[from]) / float64(to-from))
		if level = max(level, evenFloor*overall); level > 0 {
			y[i] = float64(v) / level
		}
	}
	return y
}
