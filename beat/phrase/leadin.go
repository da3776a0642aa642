package phrase

import (
	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
)

// faintShare is the onset strength, as a share of the track's usual one,
// below which a bar has no counts to be heard.
const faintShare = 0.25

// leadIn is the number of bars at the start in which nothing marks the
// counts: noise, a drone, a count carried backwards from the first beat.
func leadIn(s *bar.Sound, starts []int, meter int) int {
	strength := make([]float64, len(starts))
	for i, start := range starts {
		for _, row := range s.Onset[start:min(s.Len(), start+meter)] {
			for part := 0; part < len(row); part += bar.Parts {
				strength[i] += row[part]
			}
		}
	}
	faint := faintShare * dsp.Median(strength)
	for i, v := range strength {
		if v > faint {
			return i
		}
	}
	return 0
}
