package spectral

import "math"

const (
	lowestStep    = 21.5  // [Hz] between the bands at the bottom: the resolution of a frame
	linearTo      = 250.0 // [Hz] up to here bands are lowestStep apart
	bandsOctave   = 8     // bands per octave above
	highestCentre = 9700.0
)

// filterbank sums the bins of a power spectrum into overlapping triangular
// bands, evenly spaced to 250 Hz and 8 to the octave above.
type filterbank struct {
	centres []float64 // [Hz]
	first   []int     // first bin of each band
	weights [][]float64
}

func newFilterbank() *filterbank {
	var edges []float64
	for f := 0.0; f < linearTo; f += lowestStep {
		edges = append(edges, f)
	}
	for j := 0; ; j++ {
		f := linearTo * math.Exp2(float64(j)/bandsOctave)
		edges = append(edges, f)
		if f > highestCentre {
			break
		}
	}
	fb := &filterbank{}
	for i := 1; i+1 < len(edges); i++ {
		fb.add(edges[i-1], edges[i], edges[i+1])
	}
	return fb
}

// add appends the triangle from lo over centre to hi [Hz].
func (fb *filterbank) add(lo, centre, hi float64) {
	const binWidth = float64(Rate) / frameSize
	first := max(1, int(math.Ceil(lo/binWidth)))
	var w []float64
	for bin := first; float64(bin)*binWidth < hi && bin <= frameSize/2; bin++ {
		f := float64(bin) * binWidth
		if f <= centre {
			w = append(w, (f-lo)/(centre-lo))
		} else {
			w = append(w, (hi-f)/(hi-centre))
		}
	}
	fb.centres = append(fb.centres, centre)
	fb.first = append(fb.first, first)
	fb.weights = append(fb.weights, w)
}

// apply writes the magnitude of each band to dst; a full-scale sine has
// about 1.
func (fb *filterbank) apply(dst, power []float64) {
	const scale = 16.0 / (frameSize * frameSize) // a Hann window halves a sine's N/2
	for i, w := range fb.weights {
		sum := 0.0
		for j, p := range power[fb.first[i] : fb.first[i]+len(w)] {
			sum += w[j] * p
		}
		dst[i] = math.Sqrt(sum * scale)
	}
}
