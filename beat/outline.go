package beat

import "math"

// Outline is how loud a track is as it goes on: for every OutlineStep the
// level after the K weighting of ITU-R BS.1770 [dB] relative to the loudest
// one, 0 at most and silence at least.
type Outline []float64

// OutlineStep is the time from one level of an outline to the next [s], about
// a count.
const OutlineStep = 0.5

const (
	silence     = -60.0 // relative to the loudest [dB]
	outlineStep = 0.5   // to which levels are rounded [dB]
)

// outlineOf turns powers into levels.
func outlineOf(powers []float64) Outline {
	most := 0.0
	for _, p := range powers {
		most = max(most, p)
	}
	o := make(Outline, len(powers))
	for i, p := range powers {
		o[i] = silence
		if most > 0 && p > 0 {
			o[i] = rounded(max(silence, 10*math.Log10(p/most)), outlineStep)
		}
	}
	return o
}

// Between is the mean height of the outline from one time to another [s]: the
// amplitude, 0 to 1 for the loudest. Where nothing is known it is 0.
func (o Outline) Between(from, to float64) float64 {
	a := min(max(0, int(from/OutlineStep)), len(o))
	b := min(max(a+1, int(math.Ceil(to/OutlineStep))), len(o))
	if a >= b {
		return 0
	}
	sum := 0.0
	for _, level := range o[a:b] {
		if level > silence {
			sum += math.Pow(10, level/20)
		}
	}
	return sum / float64(b-a)
}
