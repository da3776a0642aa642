package main

import (
	"math"
	"slices"

	"onphrase/beat/score"
)

const (
	agreeF    = 0.8  // F from which two programs count alike
	sameTempo = 0.04 // relative
)

// agree reports whether two lists of counts [s] are the same for our purpose: the
// same tempo within 4 %, and F of at least 0.8.
func agree(a, b []float64) bool {
	return math.Abs(math.Log(period(a)/period(b))) < math.Log1p(sameTempo) && score.Beats(a, b).F >= agreeF
}

// period is the median distance of neighbours [s]; NaN of less than two.
func period(beats []float64) float64 {
	if len(beats) < 2 {
		return math.NaN()
	}
	d := make([]float64, len(beats)-1)
	for i := range d {
		d[i] = beats[i+1] - beats[i]
	}
	slices.Sort(d)
	return d[len(d)/2]
}

// judgement is a track held against a reference.
type judgement struct {
	track
	reference []float64 // counts [s]; none where the programs do not agree
	by        string    // who agrees on it: truth, or how many of the others
	relation  string    // of our counts to it; see relate
}

// judge finds the reference of each track: its truth, or the counts of the
// follower that most of the others agree with, when at least two of them do
// so. Our own counts have no vote.
func judge(music []track) []judgement {
	var out []judgement
	for _, t := range music {
		j := judgement{track: t, reference: t.truth, by: "truth"}
		if len(t.truth) == 0 {
			j.reference, j.by = t.consensus()
		}
		if len(j.reference) > 0 {
			j.relation = relate(j.reference, t.ours.Beats)
		}
		out = append(out, j)
	}
	return out
}

// consensus are the counts most agreed on, and by whom.
func (t track) consensus() (beats []float64, by string) {
	most, mean := 1, 0.0
	for _, f := range followers {
		voices, sum, who := 1, 0.0, f
		for _, g := range followers {
			if f != g && agree(t.others[f], t.others[g]) {
				voices++
				sum += score.Beats(t.others[f], t.others[g]).F
				who += "+" + g
			}
		}
		if voices > most || voices == most && sum > mean {
			most, mean, beats, by = voices, sum, t.others[f], who
		}
	}
	if most < 2 {
		return nil, ""
	}
	return beats, by
}

// relations are the ways to count the same music otherwise, in the order they are tried.
var relations = []struct {
	name string
	turn func(reference []float64) [][]float64
}{
	{"same", func(r []float64) [][]float64 { return [][]float64{r} }},
	{"off-beat", func(r []float64) [][]float64 { return [][]float64{between(r, 1, 2)} }},
	{"double", func(r []float64) [][]float64 { return [][]float64{divide(r, 2)} }},
	{"half", func(r []float64) [][]float64 { return thin(r, 2) }},
	{"triple", func(r []float64) [][]float64 { return [][]float64{divide(r, 3)} }},
	{"third", func(r []float64) [][]float64 { return thin(r, 3) }},
	{"3:2", func(r []float64) [][]float64 { return thin(divide(r, 3), 2) }},
	{"2:3", func(r []float64) [][]float64 { return thin(divide(r, 2), 3) }},
	{"4:3", func(r []float64) [][]float64 { return thin(divide(r, 4), 3) }},
	{"3:4", func(r []float64) [][]float64 { return thin(divide(r, 3), 4) }},
	{"quadruple", func(r []float64) [][]float64 { return [][]float64{divide(r, 4)} }},
	{"quarter", func(r []float64) [][]float64 { return thin(r, 4) }},
}

// relate names how ours relates to the reference: one of relations, "none" where
// we say there is no beat, "parts" where half of the counts are the same, else "other".
func relate(reference, ours []float64) string {
	if len(ours) == 0 {
		return "none"
	}
	for _, r := range relations {
		for _, turned := range r.turn(reference) {
			if agree(turned, ours) {
				return r.name
			}
		}
	}
	if score.Beats(reference, ours).F >= agreeF/2 {
		return "parts"
	}
	return "other"
}

// divide puts n counts where one was.
func divide(beats []float64, n int) []float64 {
	var out []float64
	for i := range n {
		out = append(out, between(beats, i, n)...)
	}
	slices.Sort(out)
	return out
}

// between are the places i/n of the way from each count to the next.
func between(beats []float64, i, n int) []float64 {
	var out []float64
	for k := 0; k+1 < len(beats); k++ {
		out = append(out, beats[k]+(beats[k+1]-beats[k])*float64(i)/float64(n))
	}
	return out
}

// thin keeps every n-th count, from each of the first n.
func thin(beats []float64, n int) [][]float64 {
	out := make([][]float64, n)
	for i, t := range beats {
		out[i%n] = append(out[i%n], t)
	}
	return out
}
