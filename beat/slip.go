package beat

import "slices"

// slips are the counts at which count 1 shifts, where nothing begins anew: a bar
// that is too short or too long.
func (t *Track) slips(fresh []int) []int {
	var out []int
	for i := 1; i < len(t.BeatInBar); i++ {
		if t.BeatInBar[i] != t.BeatInBar[i-1]%t.Meter+1 && !slices.Contains(fresh, i) {
			out = append(out, i)
		}
	}
	return out
}

// agreed says for each count which share of all has count 1 in the same place as
// it, 0-1: where count 1 shifts by some counts and there is no odd bar, only one
// of the places is right.
func (t *Track) agreed(fresh []int) []float64 {
	n := len(t.BeatInBar)
	out := make([]float64, n)
	song := 0 // where the counting began anew
	for _, next := range append(slices.Clone(fresh), n) {
		class, sums := make([]int, next-song), make([]int, t.Meter)
		for i := song; i < next; i++ {
			class[i-song] = ((i-t.BeatInBar[i])%t.Meter + t.Meter) % t.Meter
			sums[class[i-song]]++
		}
		for i := song; i < next; i++ {
			out[i] = float64(sums[class[i-song]]) / float64(next-song)
		}
		song = next
	}
	return out
}
