package score

import (
	"math"
	"slices"
)

// errorBins is the number of bins of the histogram of beat errors.
const errorBins = 41

// informationGain is how far the histogram of beat errors is from an even
// one, in the worse of the two directions.
//
// Ref: Davies, Degara & Plumbley 2011, "Measuring the performance of beat
// tracking algorithms using a beat error histogram" (IEEE SPL 18).
func informationGain(reference, estimated []float64) float64 {
	norm := math.Log2(errorBins)
	return (norm - max(errorEntropy(reference, estimated), errorEntropy(estimated, reference))) / norm
}

func errorEntropy(ref, est []float64) float64 {
	edges := make([]float64, errorBins+1)
	for i := range edges {
		edges[i] = -0.5 + float64(i)/errorBins
	}
	edges[errorBins] = 0.5
	var histogram [errorBins]float64
	for _, t := range est {
		e := relativeError(ref, t)
		i, exact := slices.BinarySearch(edges, e)
		if !exact {
			i--
		}
		histogram[min(max(i, 0), errorBins-1)]++
	}
	entropy := 0.0
	for _, n := range histogram {
		if n > 0 {
			p := n / float64(len(est))
			entropy -= p * math.Log2(p)
		}
	}
	return entropy
}

// relativeError is the distance of t from its nearest reference beat in units
// of the reference interval it falls in, wrapped into (-0.5, 0.5].
//
// Before the first reference beat there is no interval. mir_eval takes the
// whole span of the reference there, with a negative sign; so do we, to agree
// with published figures.
func relativeError(ref []float64, t float64) float64 {
	k, last := nearest(ref, t), len(ref)-1
	d := t - ref[k]
	interval := 0.0
	switch {
	case k == last:
		interval = ref[last] - ref[last-1]
	case d >= 0:
		interval = ref[k+1] - ref[k]
	case k > 0:
		interval = ref[k] - ref[k-1]
	default:
		interval = ref[0] - ref[last]
	}
	e := d / interval
	return math.Mod(math.Mod(e+0.5, 1)-1, 1) + 0.5
}
