package score

import "math"

const (
	tempoTolerance  = 0.04 // of Acc1 and Acc2
	pairedTolerance = 0.08 // of TempoPair
)

// Tempo says whether a tempo is right (Acc1), and whether it is right up to a
// factor of 2, 3, 1/2 or 1/3 (Acc2), within 4 %.
type Tempo struct{ Acc1, Acc2 bool }

// CompareTempo compares a tempo with the reference [1/min].
//
// Ref: Gouyon et al. 2006, "An experimental comparison of audio tempo
// induction algorithms".
func CompareTempo(reference, estimated float64) Tempo {
	var t Tempo
	for i, factor := range []float64{1, 2, 3, 1. / 2, 1. / 3} {
		ok := math.Abs(estimated-factor*reference) <= tempoTolerance*factor*reference
		t.Acc2 = t.Acc2 || ok
		if i == 0 {
			t.Acc1 = ok
		}
	}
	return t
}

// Pair scores two estimated tempi against two reference tempi.
type Pair struct {
	P        float64 // the weights of the reference tempi that were found
	One, All bool    // whether one was found, whether all were
}

// TempoPair compares estimated tempi with two reference tempi [1/min], the
// first of the given weight (0-1), within 8 %.
//
// Ref: McKinney & Moelants 2004; MIREX "Audio Tempo Extraction".
func TempoPair(reference [2]float64, weight float64, estimated [2]float64) Pair {
	r := Pair{All: true}
	for i, w := range []float64{weight, 1 - weight} {
		ref := reference[i]
		near := min(math.Abs(estimated[0]-ref), math.Abs(estimated[1]-ref))
		hit := ref > 0 && near <= pairedTolerance*ref
		if hit {
			r.P += w
		}
		r.One = r.One || hit
		r.All = r.All && hit
	}
	return r
}
