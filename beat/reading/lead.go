package reading

import "slices"

const (
	leastShared = 0.85 // share of the counts that a reading must have to be theirs
	fewestLead  = 4    // counts that make a reading
)

// Lead puts the reading first that the given counts [s] belong to, so that the
// others are its rivals. Where no reading is like them, they become one.
func Lead(all []Reading, counts []float64) []Reading {
	if len(counts) < fewestLead {
		return all
	}
	best, at := 0.0, -1
	for i, r := range all {
		if s := shared(counts, r.Beats); s > best {
			best, at = s, i
		}
	}
	if best >= leastShared {
		r := all[at]
		return slices.Insert(slices.Delete(all, at, at+1), 0, r)
	}
	return slices.Insert(all, 0, Reading{Beats: counts, Period: usual(counts)})
}

// shared is the F-measure of two lists of beats, 0-1: what they have in common,
// of all that either has.
func shared(a, b []float64) float64 {
	common := 0
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch d := a[i] - b[j]; {
		case d > samePlace:
			j++
		case d < -samePlace:
			i++
		default:
			common, i, j = common+1, i+1, j+1
		}
	}
	return 2 * float64(common) / float64(max(1, len(a)+len(b)))
}
