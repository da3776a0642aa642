package score

import (
	"math"
	"slices"
)

const (
	// Trim is where the comparison of beats starts [s].
	Trim = 5.0
	// window is how far a beat may be from its reference [s].
	window = 0.07
	// cemgilSigma is the width of Cemgil's Gaussian [s].
	cemgilSigma = 0.04
)

// Result holds every measure of one comparison.
type Result struct {
	F          float64 // share of beats within 70 ms, precision and recall combined
	Cemgil     float64 // like F, but a beat counts the less the further away it is
	CemgilBest float64 // the same at the best metrical level
	PScore     float64 // cross-correlation within 20 % of a beat
	CMLc, CMLt float64 // correct metrical level: longest stretch, total
	AMLc, AMLt float64 // the same where double, half and off-beat also pass
	Gain       float64 // information gain
}

// Beats compares estimated beats with the reference.
func Beats(reference, estimated []float64) Result {
	ref, est := trim(reference), trim(estimated)
	r := Result{F: FMeasure(ref, est, window)}
	if len(ref) < 2 || len(est) < 2 {
		return r
	}
	r.Cemgil, r.CemgilBest = cemgil(ref, est)
	r.PScore = pScore(ref, est)
	c := continuity(ref, est)
	r.CMLc, r.CMLt, r.AMLc, r.AMLt = c.CMLc, c.CMLt, c.AMLc, c.AMLt
	r.Gain = informationGain(ref, est)
	return r
}

func trim(beats []float64) []float64 {
	i, _ := slices.BinarySearch(beats, Trim)
	return beats[i:]
}

// FMeasure is the harmonic mean of the shares of both lists that have a
// partner within tolerance [s], each event used once.
//
// Ref: Dixon 2007, "Evaluation of the audio beat tracking system BeatRoot".
func FMeasure(reference, estimated []float64, tolerance float64) float64 {
	if len(reference) == 0 || len(estimated) == 0 {
		return 0
	}
	hits := 0
	// Both lists increase, so taking the earliest partner first matches as
	// many as can be matched.
	for i, j := 0, 0; i < len(reference) && j < len(estimated); {
		switch d := estimated[j] - reference[i]; {
		case math.Abs(d) <= tolerance:
			hits++
			i++
			j++
		case d < 0:
			j++
		default:
			i++
		}
	}
	return 2 * float64(hits) / float64(len(reference)+len(estimated))
}

// cemgil sums a Gaussian of each reference beat's distance to the nearest
// estimate; best is the greatest over the metrical variations.
//
// Ref: Cemgil, Kappen, Desain & Honing 2001, "On tempo tracking: tempogram
// representation and Kalman filtering".
func cemgil(reference, estimated []float64) (correct, best float64) {
	for i, ref := range variations(reference) {
		sum := 0.0
		for _, t := range ref {
			d := estimated[nearest(estimated, t)] - t
			sum += math.Exp(-d * d / (2 * cemgilSigma * cemgilSigma))
		}
		sum /= 0.5 * float64(len(estimated)+len(ref))
		if i == 0 {
			correct = sum
		}
		best = max(best, sum)
	}
	return correct, best
}

// variations lists the reference as it is, on the off-beats, at double tempo
// and at half tempo from its first and from its second beat.
func variations(beats []float64) [][]float64 {
	var between, double, odd, even []float64
	for i, t := range beats {
		double = append(double, t)
		if i+1 < len(beats) {
			mid := (t + beats[i+1]) / 2
			between = append(between, mid)
			double = append(double, mid)
		}
		if i%2 == 0 {
			odd = append(odd, t)
		} else {
			even = append(even, t)
		}
	}
	return [][]float64{beats, between, double, odd, even}
}

// nearest is the index of the beat closest to t; the earlier on a tie.
func nearest(beats []float64, t float64) int {
	i, _ := slices.BinarySearch(beats, t)
	if i == len(beats) || i > 0 && t-beats[i-1] <= beats[i]-t {
		return i - 1
	}
	return i
}

// Errors lists estimated minus reference time [s] for every reference beat
// with an estimate within 70 ms.
func Errors(reference, estimated []float64) []float64 {
	var errs []float64
	if len(estimated) == 0 {
		return nil
	}
	for _, t := range reference {
		if d := estimated[nearest(estimated, t)] - t; math.Abs(d) <= window {
			errs = append(errs, d)
		}
	}
	return errs
}
