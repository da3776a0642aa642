package song

import (
	"math"
	"slices"

	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
)

const (
	block    = 8  // beats heard as one: an eight
	reach    = 20 // blocks to either side that are compared
	shortest = 12 // blocks of a song: less may be a section that does not come back,
	// but for one that a change of tempo parts from the others
	shortestAtSeam = 6
	neighbor       = 2 // blocks apart from which two are compared: next to each other they always are alike
	closest        = 3 // blocks most like each that are asked for their side

	// leastOdds is how much must speak for another song to begin [log-odds]: of 65
	// produced songs that nothing was fitted to none has as much in its midst. What is
	// longer than a song usually is a mix: there leastLong is enough, and where the
	// tempo changes or the counting jumps leastAtSeam.
	leastOdds, leastLong, leastAtSeam = 2.5, 1.0, -2.0
	// longSong are the beats that hardly any song has: seven minutes at 120.
	longSong = 840
	// seamNear is how many blocks from a seam a song may seem to begin that begins there.
	seamNear = 2
)

// Find lists the beats at which another song begins, the first one not among
// them. seams are beats at which the tempo changes or the counting jumps; inBar
// is 1 for a count 1.
func Find(s *bar.Sound, inBar []int, seams []int) []int {
	odds := odds(s)
	var out []int
	free := func(at, blocks int) bool { // of another song near
		return !slices.ContainsFunc(out, func(o int) bool { return max(o-at, at-o) < blocks*block })
	}
	for _, seam := range seams {
		if at := seam / block; most(odds, at, seamNear) >= leastAtSeam && free(seam, shortestAtSeam) {
			out = append(out, seam)
		}
	}
	least := leastOdds
	if s.Len() > longSong {
		least = leastLong
	}
	for b, v := range odds {
		if b < shortest || b+shortest > len(odds) || v < least || v < most(odds, b, shortest) {
			continue
		}
		if at := turn(s, inBar, b*block); free(at, shortest) {
			out = append(out, at)
		}
	}
	slices.Sort(out)
	return out
}

// most is the greatest of x within reach of place i; the least there is where
// nothing is.
func most(x []float64, i, reach int) float64 {
	best := math.Inf(-1)
	for _, v := range x[min(len(x), max(0, i-reach)):min(len(x), i+reach+1)] {
		best = max(best, v)
	}
	return best
}

// turn is the count 1 around a beat at which the sound changes most.
func turn(s *bar.Sound, inBar []int, at int) int {
	best, most := at, -1.0
	for i := max(block, at-seamNear*block); i <= min(len(inBar)-block, at+seamNear*block); i++ {
		if inBar[i] != 1 {
			continue
		}
		if c := change(s, i); c > most {
			best, most = i, c
		}
	}
	return best
}

// change is how unlike the sound of a block before and after a beat is.
func change(s *bar.Sound, at int) float64 {
	sum := 0.0
	for _, x := range [][][]float64{s.Level, s.Chroma, s.Bass} {
		before, after := dsp.MeanRow(x[at-block:at]), dsp.MeanRow(x[at:at+block])
		for j, v := range before {
			sum += (after[j] - v) * (after[j] - v)
		}
	}
	return sum
}
