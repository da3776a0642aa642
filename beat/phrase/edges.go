package phrase

import (
	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
)

const (
	// faintShare is the onset strength, as a share of the track's usual one,
	// below which a beat cannot be heard.
	faintShare = 0.25
	// leastFirst and leastLast are the shares of their beats that must be
	// heard in the first bar and in the last one. Music may begin with little,
	// but a closing chord on count 1 makes no bar.
	leastFirst, leastLast = 0.25, 0.5
)

// edges cuts off the bars at both ends in which the counts cannot be heard:
// noise or a drone before the music sets in, counts carried on after its last
// chord.
func edges(s *bar.Sound, starts []int, meter int) (first, last int) {
	strength := make([]float64, s.Len())
	for i, row := range s.Onset {
		for part := 0; part < len(row); part += bar.Parts {
			strength[i] += row[part]
		}
	}
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
	for first < last && !(heardShare(starts[first]) >= leastFirst &&
		(first+1 == last || heardShare(starts[first+1]) >= leastFirst)) {
		first++ // a single sound in an intro begins nothing
	}
	for last > first && heardShare(starts[last-1]) < leastLast {
		last--
	}
	return first, last
}
