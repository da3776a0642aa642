package library

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"onphrase/beat"
)

// Edition is how another file of a song compares with the one that the class
// was made to.
type Edition struct {
	Alike bool    // its counts and phrases follow each other in the same way
	Later float64 // how much later they fall [s], negative for earlier
}

// Fits tells whether the class can be taught to it as it is.
func (e Edition) Fits() bool { return e.Alike && math.Abs(e.Later) <= editionError }

const (
	// editionError is how far apart two hearings of one count may be [s]; a
	// tenth of a count at 180 BPM.
	editionError = 0.033
	// editionShift is how much earlier or later another edition is looked for
	// [s]: a fade or a spoken beginning.
	editionShift = 15
	// editionShare is how many of the counts and of the phrases that both have
	// must agree.
	editionShare = 0.8
	// editionOverlap is how much of the song the other must have: the ends of two
	// editions may differ.
	editionOverlap = 0.6
)

// MostCounts is more than any song has: two hours at 240 BPM.
const MostCounts = 2 * 60 * 240

// Compare finds the least shift by which one hearing of a song is the other.
// Where phrases are all alike, larger ones would do as well.
func Compare(was, is beat.Track) Edition {
	for _, d := range shifts(was, is) {
		if agree(was.Beats, is.Beats, d) >= editionShare && agree(starts(was), starts(is), d) >= editionShare {
			return Edition{true, d + fine(was.Beats, is.Beats, d)}
		}
	}
	return Edition{}
}

// shifts lists what may be the shift, the smallest first.
func shifts(was, is beat.Track) []float64 {
	all := []float64{0}
	for _, a := range starts(was) {
		for _, b := range starts(is) {
			if math.Abs(b-a) <= editionShift {
				all = append(all, b-a)
			}
		}
	}
	slices.SortFunc(all, func(a, b float64) int {
		return cmp.Compare(math.Abs(a), math.Abs(b))
	})
	return slices.Compact(all)
}

func starts(t beat.Track) []float64 {
	all := make([]float64, len(t.Phrases))
	for i, p := range t.Phrases {
		all[i] = p.Time
	}
	return all
}

// agree is the share of moments that have one of the others at their place, of
// those that lie between the first and the last of the others.
func agree(was, is []float64, shift float64) float64 {
	n, both := 0, 0
	for _, a := range was {
		a += shift
		if len(is) == 0 || a < is[0]-editionError || a > is[len(is)-1]+editionError {
			continue
		}
		both++
		if d, ok := off(is, a); ok && math.Abs(d) <= editionError {
			n++
		}
	}
	if float64(both) < editionOverlap*float64(len(was)) || both == 0 {
		return 0
	}
	return float64(n) / float64(both)
}

// off is how much later than a moment the nearest of the others is.
func off(all []float64, t float64) (float64, bool) {
	i := sort.SearchFloat64s(all, t)
	best, ok := 0.0, false
	for _, j := range []int{i - 1, i} {
		if j >= 0 && j < len(all) && (!ok || math.Abs(all[j]-t) < math.Abs(best)) {
			best, ok = all[j]-t, true
		}
	}
	return best, ok
}

// fine is what is left between the counts after a shift: the median.
func fine(was, is []float64, shift float64) float64 {
	var left []float64
	for _, a := range was {
		if d, ok := off(is, a+shift); ok && math.Abs(d) <= editionError {
			left = append(left, d)
		}
	}
	if len(left) == 0 {
		return 0
	}
	sort.Float64s(left)
	return left[len(left)/2]
}
