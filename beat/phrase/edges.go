package phrase

import (
	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
)

const (
	// faintShare is the onset strength, as a share of the track's usual one,
	// below which a beat cannot be heard.
	faintShare = 0.25
	// audibleShare is the share of its beats that must be heard in the first
	// and in the last bar of the first and the last phrase.
	audibleShare = 0.5
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
	audible := func(start int) bool {
		heard := 0
		for _, v := range strength[start:min(len(strength), start+meter)] {
			if v > faint {
				heard++
			}
		}
		return float64(heard) >= audibleShare*float64(meter)
	}
	last = len(starts)
	for first < last && !audible(starts[first]) {
		first++
	}
	for last > first && !audible(starts[last-1]) {
		last--
	}
	return first, last
}
