package main

import (
	"fmt"
	"io"
	"math"

	"onphrase/beat"
	"onphrase/beat/score"
)

// count1 is the F of the counts 1 of a track; NaN where the truth is only the
// file's bar line. Where half or double tempo is as good an answer, the truth
// is taken at the level that was found: bars of half their counts, or of two
// of the reference.
func count1(s song, t beat.Track) float64 {
	if s.doubt == "downbeat" {
		return math.NaN()
	}
	found := ones(t.Beats, t.BeatInBar, 1)
	best := score.FMeasure(ones(s.beats, s.position, 1), found, oneWindow)
	if s.doubt != "octave" {
		return best
	}
	for _, reference := range levels(s) {
		best = max(best, score.FMeasure(reference, found, oneWindow))
	}
	return best
}

// levels are the counts 1 of a song counted twice as fast, and half as fast
// from its first bar or its second.
func levels(s song) [][]float64 {
	all := ones(s.beats, s.position, 1)
	var bars [2][]float64
	for i, t := range all {
		bars[i%2] = append(bars[i%2], t)
	}
	meter := 1
	for _, p := range s.position {
		meter = max(meter, p)
	}
	out := [][]float64{bars[0], bars[1]}
	if meter%2 == 0 {
		out = append(out, ones(s.beats, s.position, 1, 1+meter/2))
	}
	return out
}

// ones are the beats with one of some numbers in their bar.
func ones(beats []float64, position []int, numbers ...int) []float64 {
	var out []float64
	for i, p := range position {
		for _, n := range numbers {
			if p == n {
				out = append(out, beats[i])
			}
		}
	}
	return out
}

// reportOnes says how often count 1 of a given trust is right.
func reportOnes(w io.Writer, all []result) {
	fmt.Fprintf(w, "\ntrust in count 1: tracks, mean trust, share with F >= %.1f\n", goodF)
	var list []score.Claim
	for _, r := range all {
		if !math.IsNaN(r.one) {
			list = append(list, score.Claim{Trust: r.track.Trust.Count1, Right: share(r.one >= goodF)})
		}
	}
	score.WriteReliability(w, score.TrustBins, list)
	fmt.Fprintf(w, "\ncount 1 wrong (F < %.1f):\n", goodF)
	for _, r := range all {
		if r.one < goodF {
			fmt.Fprintf(w, "  %-10s %-24s F %.2f, beats F %.2f, meter %d, trust %.2f\n", r.id, r.style, r.one, r.F,
				r.track.Meter, r.track.Trust.Count1)
		}
	}
}
