package phrase

import (
	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
)

const (
	// faintShare is the onset strength, as a share of the track's usual one,
	// below which a beat cannot be heard.
	faintShare = 0.33
	// leastFirst and leastLast are the shares of their beats that must be
	// heard in the first bar and in the last one. Music may begin with little,
	// but a closing chord on count 1 makes no bar.
	leastFirst, leastLast = 0.25, 0.5
	// aloneShare is how many times more must begin on count 1 than on any
	// other count of a bar, and leastAlone how much at least, so that the bar is
	// heard by it alone: a chord a bar.
	aloneShare, leastAlone = 2, 0.5
)

// edges cuts off the bars at both ends in which the counts cannot be heard:
// noise or a drone before the music sets in, counts carried on after its last
// chord.
func edges(s *bar.Sound, starts []int, meter int) (first, last int) {
	strength := strengths(s)
	faint := faintShare * dsp.Median(strength)
	heardShare := func(start int) float64 {
		heard := 0.0
		for _, v := range strength[start:min(len(strength), start+meter)] {
			if v > faint {
				heard++
			}
		}
		return heard / float64(meter)
	}
	last = len(starts)
	one := func(start int) bool { return strength[start] > faint || start == 0 && loudFromStart(s, meter) }
	begins := func(i int) bool {
		if i+1 == last {
			return heardShare(starts[i]) >= leastFirst
		}
		// A single sound in an intro begins nothing, and what is heard without a
		// count 1, before bars with one, is a pick-up.
		return heardShare(starts[i]) >= leastFirst && heardShare(starts[i+1]) >= leastFirst &&
			(one(starts[i]) || !one(starts[i+1]))
	}
	for first < last && !begins(first) {
		first++
	}
	back := first
	for back > 0 && first < last && alone(s, strength, starts[back-1], meter) {
		back--
	}
	if first-back > 1 || first > back && starts[back] == 0 { // a single stroke is stray, but at the very beginning
		first = back
	}
	for last > first && heardShare(starts[last-1]) < leastLast {
		last--
	}
	return first, last
}

// strengths are how much begins within each beat: on it, or off it, as a hat
// does, which tells the beat, too.
func strengths(s *bar.Sound) []float64 {
	out := make([]float64, s.Len())
	for i, row := range s.Onset {
		for part := range bar.Parts {
			begun := 0.0
			for j := part; j < len(row); j += bar.Parts {
				begun += row[j]
			}
			out[i] = max(out[i], begun)
		}
	}
	return out
}

// alone reports whether a bar is told by what begins on its count 1 alone.
func alone(s *bar.Sound, strength []float64, start, meter int) bool {
	if start == 0 {
		return loudFromStart(s, meter)
	}
	rest := 0.0
	for i := start + 1; i < min(len(strength), start+meter); i++ {
		rest = max(rest, strength[i])
	}
	return strength[start] >= max(leastAlone, aloneShare*rest)
}

// loudFromStart reports whether the first beat of a track is about as loud as
// those after it. What sounds from the very beginning begins there, though
// nothing can be heard to begin.
func loudFromStart(s *bar.Sound, meter int) bool {
	const asLoud = 0.75
	rest, n := 0.0, min(s.Len(), meter)
	for i := 1; i < n; i++ {
		rest += sum(s.Level[i]) / float64(n-1)
	}
	return rest > 0 && sum(s.Level[0]) >= asLoud*rest
}
