package spectral

import "math"

const (
	noveltySpan = 0.3  // compared before and after a frame [s]
	noveltyLow  = 80   // [Hz]: below, kicks outweigh notes
	noveltyHigh = 2500 // [Hz]: above, cymbals do
)

// Novelty says for each frame how much the spectrum after it differs from the
// one before, 0-2, over the range of bass notes and chords: a change of
// harmony shows even where no drum sounds.
//
// Ref: Davies & Plumbley 2006, "A spectral difference approach to downbeat
// extraction in musical audio" (EUSIPCO), for the idea; ours is the cosine
// distance of levels from the track's mean.
func (f *Frames) Novelty() []float64 {
	low, high := 0, len(f.Bands)
	for low < high && f.Bands[low] < noveltyLow {
		low++
	}
	for high > low && f.Bands[high-1] > noveltyHigh {
		high--
	}
	n, span := f.Len(), int(noveltySpan*f.FPS)
	mean := make([]float64, high-low)
	for i := range n {
		for j, v := range f.At(i)[low:high] {
			mean[j] += float64(v) / float64(n)
		}
	}
	before, after := make([]float64, high-low), make([]float64, high-low)
	add := func(sum []float64, i int, sign float64) {
		if i >= 0 && i < n {
			for j, v := range f.At(i)[low:high] {
				sum[j] += sign * (float64(v) - mean[j])
			}
		}
	}
	for i := range span {
		add(after, i, 1)
	}
	novelty := make([]float64, n)
	for i := range novelty {
		novelty[i] = 1 - cosine(before, after)
		add(before, i, 1)
		add(before, i-span, -1)
		add(after, i, -1)
		add(after, i+span, 1)
	}
	return novelty
}

func cosine(a, b []float64) float64 {
	var ab, aa, bb float64
	for i := range a {
		ab += a[i] * b[i]
		aa += a[i] * a[i]
		bb += b[i] * b[i]
	}
	if aa == 0 || bb == 0 {
		return 1 // silence is nothing new
	}
	return ab / math.Sqrt(aa*bb)
}

// Stretch reads a curve at another frame rate, n frames long.
func Stretch(x []float64, fps, newFPS float64, n int) []float64 {
	y := make([]float64, n)
	for i := range y {
		pos := float64(i) / newFPS * fps
		j := min(int(pos), len(x)-1)
		k := min(j+1, len(x)-1)
		y[i] = x[j] + (pos-math.Floor(pos))*(x[k]-x[j])
	}
	return y
}
