package reading

import (
	"cmp"
	"math"
	"slices"

	"onphrase/beat/internal/dsp"
)

// Listen hears all readings: it collects their clues. ear is nil where it hears
// no music.
func Listen(all []Reading, sound Evidence, ear *Ear) {
	var h hearing
	if ear != nil {
		h = ear.hearing(all)
	}
	for i := range all {
		all[i].Clues = sound.hear(all[i])
		if ear != nil {
			all[i].Heard = ear.listen(all[i], h, sound.Period)
		}
	}
}

// Choose weighs the readings against each other by their clues and lists them,
// those that mean the same beats once: first the one to count by, then the
// others, likeliest first.
func Choose(all []Reading) []Reading {
	score := make([]float64, len(all))
	top := math.Inf(-1)
	for i, r := range all {
		score[i] = r.score()
		top = max(top, score[i])
	}
	sum := 0.0
	for i := range score {
		score[i] = math.Exp(score[i] - top)
		sum += score[i]
	}
	for i := range all {
		all[i].Odds = score[i] / sum
	}
	slices.SortStableFunc(all, func(a, b Reading) int { return cmp.Compare(b.Odds, a.Odds) })
	all = merge(all)
	slices.SortStableFunc(all, func(a, b Reading) int { return cmp.Compare(b.Odds, a.Odds) })
	if i := preferred(all); i > 0 {
		r := all[i]
		all = slices.Insert(slices.Delete(all, i, i+1), 0, r)
	}
	return all
}

// score is what the clues of a reading add up to [log-units].
func (r Reading) score() float64 {
	sound := weigh(weights, r.Clues)
	if r.Heard == nil {
		return sound
	}
	return heardWeights[0]*sound + weigh(heardWeights[1:], r.Heard)
}

// Over is how much likelier a reading is than another, by their clues [log-odds].
func (r Reading) Over(other Reading) float64 { return r.score() - other.score() }

func weigh(weights []float64, clues Clues) float64 {
	sum := 0.0
	for j, v := range clues {
		sum += weights[j] * v
	}
	return sum
}

const (
	sameTempo = 0.03  // relative
	samePlace = 0.05  // [s]
	hardlyAny = 0.001 // odds not worth merging
)

// merge adds up the odds of readings that mean the same beats; the likeliest
// of them stays.
func merge(sorted []Reading) []Reading {
	var out []Reading
	for _, r := range sorted {
		i := -1
		if r.Odds > hardlyAny {
			i = slices.IndexFunc(out, func(o Reading) bool { return same(o, r) })
		}
		if i >= 0 {
			out[i].Odds += r.Odds
		} else {
			out = append(out, r)
		}
	}
	return out
}

// same reports whether two readings mean the same beats.
func same(a, b Reading) bool {
	if math.Abs(math.Log(a.Period/b.Period)) > sameTempo || len(a.Beats) == 0 || len(b.Beats) == 0 {
		return false
	}
	var distance []float64
	for _, t := range a.Beats {
		i, _ := slices.BinarySearch(b.Beats, t)
		d := math.Inf(1)
		if i > 0 {
			d = t - b.Beats[i-1]
		}
		if i < len(b.Beats) {
			d = min(d, b.Beats[i]-t)
		}
		distance = append(distance, d)
	}
	return dsp.Median(distance) < samePlace
}
