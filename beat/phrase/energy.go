package phrase

import "onphrase/beat/bar"

// Energy is how full a phrase sounds beside the others of its track.
type Energy int

// The energies, from the quietest on.
const (
	Low Energy = iota
	Medium
	High
)

const (
	// evenSpread is the spread of level within which all phrases of a track
	// count as medium [log-units a band].
	evenSpread = 0.15
	// lowShare and highShare part the range between the quietest and the
	// fullest phrase.
	lowShare, highShare = 1.0 / 3, 2.0 / 3
)

// rate gives each phrase its energy: low, medium or high third of the range
// of mean levels and onsets in the track.
func rate(phrases []Phrase, s *bar.Sound) {
	if len(phrases) == 0 {
		return
	}
	fullness := make([]float64, len(phrases))
	least, most := 0.0, 0.0
	for i, p := range phrases {
		fullness[i] = fullnessOf(s, p.Beat, p.Beat+p.Counts)
		if i == 0 || fullness[i] < least {
			least = fullness[i]
		}
		if i == 0 || fullness[i] > most {
			most = fullness[i]
		}
	}
	for i := range phrases {
		share := (fullness[i] - least) / (most - least)
		switch {
		case most-least < evenSpread:
			phrases[i].Energy = Medium
		case share < lowShare:
			phrases[i].Energy = Low
		case share < highShare:
			phrases[i].Energy = Medium
		default:
			phrases[i].Energy = High
		}
	}
}

// fullnessOf is the mean log level of all bands from one beat up to another.
func fullnessOf(s *bar.Sound, from, to int) float64 {
	sum, n := 0.0, 0.0
	for _, row := range s.Level[from:to] {
		for _, v := range row {
			sum += v
			n++
		}
	}
	return sum / n
}
