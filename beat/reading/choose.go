package reading

import (
	"math"
	"slices"
)

// Choose weighs the readings against each other by their clues and sorts them,
// likeliest first. evidence is as for Hear.
func Choose(all []Reading, evidence [][]float64, fps float64) []Reading {
	score := make([]float64, len(all))
	top := math.Inf(-1)
	for i := range all {
		all[i].Clues = Hear(all[i].Beats, evidence, fps)
		for j, v := range all[i].Clues {
			score[i] += weights[j] * v
		}
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
	slices.SortStableFunc(all, func(a, b Reading) int {
		switch {
		case a.Odds > b.Odds:
			return -1
		case a.Odds < b.Odds:
			return 1
		}
		return 0
	})
	return all
}
