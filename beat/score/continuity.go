package score

import "math"

// continuityTolerance is how far phase and period may be off, as a share of
// the reference interval.
const continuityTolerance = 0.175

// continuity counts beats that are right together with the one before.
//
// Ref: Hainsworth 2004, "Techniques for the automated analysis of musical
// audio", and Klapuri, Eronen & Astola 2006.
func continuity(reference, estimated []float64) (r Result) {
	for i, ref := range variations(reference) {
		if len(ref) < 2 {
			continue
		}
		longest, total := continuous(ref, estimated)
		if i == 0 {
			r.CMLc, r.CMLt = longest, total
		}
		r.AMLc, r.AMLt = max(r.AMLc, longest), max(r.AMLt, total)
	}
	return r
}

func continuous(ref, est []float64) (longest, total float64) {
	n := max(len(ref), len(est))
	used := make([]bool, len(ref))
	run, best, hits := 0, 0, 0
	for m, t := range est {
		k := nearest(ref, t)
		if used[k] || !fits(ref, est, k, m) {
			run = 0
			continue
		}
		used[k] = true
		run++
		hits++
		best = max(best, run)
	}
	return float64(best) / float64(n), float64(hits) / float64(n)
}

// fits reports whether estimate m agrees with reference k in phase and, over
// the interval before (after, for the first), in period.
func fits(ref, est []float64, k, m int) bool {
	refInterval, estInterval := 0.0, 0.0
	if m == 0 || k == 0 {
		refInterval = ref[min(k+1, len(ref)-1)] - ref[min(k+1, len(ref)-1)-1]
		estInterval = est[min(m+1, len(est)-1)] - est[min(m+1, len(est)-1)-1]
	} else {
		refInterval, estInterval = ref[k]-ref[k-1], est[m]-est[m-1]
	}
	phase := math.Abs(est[m]-ref[k]) / refInterval
	period := math.Abs(1 - estInterval/refInterval)
	return phase < continuityTolerance && period < continuityTolerance
}
