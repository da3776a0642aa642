package main

import "onphrase/beat/score"

// level is a score at one metrical level of the truth.
type level struct {
	score.Result
	score.Tempo
}

// bestLevel is the score at the level of the truth that the track was counted
// at: where the truth says that half or double tempo is as good an answer,
// counts 1, 3, ... or halves between the counts are right, too. Off-beats are not.
func (r result) bestLevel() level {
	best := level{r.Result, r.Tempo}
	if r.doubt != "octave" {
		return best
	}
	for _, other := range []struct {
		factor float64
		beats  []float64
	}{{0.5, everySecond(r.beats, r.position)}, {2, doubled(r.beats)}} {
		l := level{score.Beats(other.beats, r.track.Beats), score.CompareTempo(r.bpm*other.factor, r.track.BPM)}
		if l.Acc1 && l.F > best.F {
			best = l
		}
	}
	return best
}

// everySecond are the beats with an odd place in their bar.
func everySecond(beats []float64, position []int) []float64 {
	var half []float64
	for i, t := range beats {
		if position[i]%2 == 1 {
			half = append(half, t)
		}
	}
	return half
}

// doubled are the beats and the middles between them.
func doubled(beats []float64) []float64 {
	var double []float64
	for i, t := range beats {
		if i > 0 {
			double = append(double, (beats[i-1]+t)/2)
		}
		double = append(double, t)
	}
	return double
}
