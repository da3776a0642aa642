package main

import (
	"errors"
	"flag"
	"fmt"
	"math"

	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/score"
)

// bars finds the weights of beat/bar that suit the songs of some folders.
func bars(args []string) error {
	f := flag.NewFlagSet("bars", flag.ExitOnError)
	keep := f.Bool("write", false, "write the weights into the source")
	f.Parse(args)
	songs, err := examples(f.Args())
	if err != nil {
		return err
	}
	w := fitBars(songs)
	fmt.Printf("bar: clueWeights %.2f\n", w)
	if !*keep {
		return nil
	}
	return write(barWeights, "clueWeights", w...)
}

// fit finds the weights of beat/phrase that suit the songs of some folders.
func fit(args []string) error {
	f := flag.NewFlagSet("fit", flag.ExitOnError)
	keep := f.Bool("write", false, "write the weights into the source")
	f.Parse(args)
	songs, err := examples(f.Args())
	if err != nil {
		return err
	}
	w := fitPhrases(songs)
	fmt.Printf("phrase: clueWeights %.2f, startOdds %.2f\n", w[:phrase.ClueCount], w[phrase.ClueCount])
	if !*keep {
		return nil
	}
	return errors.Join(write(phraseWeights, "clueWeights", w[:phrase.ClueCount]...), write(phraseWeights, "startOdds", w[phrase.ClueCount]))
}

// fitBars maximises the likelihood of the true phase of each song among all.
func fitBars(songs []*example) []float64 {
	var all [][][]float64 // by song and phase, the true one first: the mean of each clue
	for _, e := range songs {
		if e.meter() == 4 {
			all = append(all, phases(e))
		}
	}
	return climb(make([]float64, bar.ClueCount), func(w []float64) []float64 {
		g := make([]float64, len(w))
		for _, means := range all {
			odds := make([]float64, len(means))
			for p, m := range means {
				odds[p] = dot(w, m)
			}
			for p, chance := range softmax(odds) {
				truth := 0.0
				if p == 0 {
					truth = 1
				}
				for k, v := range means[p] {
					g[k] += (truth - chance) * v / float64(len(all))
				}
			}
		}
		for k := range g {
			g[k] -= ridge * w[k]
		}
		return g
	})
}

// phases are the mean clues of the beats at each position in the bar.
func phases(e *example) [][]float64 {
	sum, n := make([][]float64, e.meter()), make([]float64, e.meter())
	for p := range sum {
		sum[p] = make([]float64, bar.ClueCount)
	}
	clues := bar.Clues(e.sound)
	for i, p := range e.position {
		n[p-1]++
		for k := range clues {
			sum[p-1][k] += clues[k][i]
		}
	}
	for p := range sum {
		for k := range sum[p] {
			sum[p][k] /= max(1, n[p])
		}
	}
	return sum
}

// certain are log-odds of what is known.
const certain = 40

// fitPhrases maximises the likelihood of the true list of phrases under the
// chain of beat/phrase: at the maximum the clues at the starts that the chain
// expects are those at the true ones. The last weight is that of a bar as
// such.
func fitPhrases(songs []*example) []float64 {
	var all []barred
	for _, e := range songs {
		if e.meter() < 3 {
			continue // of bars in pairs, a phrase may start at the second
		}
		if b := barsOf(e); len(b.known) > 1 {
			all = append(all, b)
		}
	}
	from := make([]float64, phrase.ClueCount+1)
	from[phrase.ClueCount] = -3
	return climb(from, func(w []float64) []float64 {
		g := make([]float64, len(w))
		for _, b := range all {
			odds, told := make([]float64, len(b.known)), make([]float64, len(b.known))
			for i := range odds {
				odds[i] = dot(w, b.clues[i])
				told[i] = odds[i] + b.known[i]
			}
			guess, truth := phrase.Chances(odds, false), phrase.Chances(told, false)
			for i := 1; i < len(odds); i++ {
				for k, v := range b.clues[i] {
					g[k] += (truth[i] - guess[i]) * v / float64(len(all))
				}
			}
		}
		for k := range phrase.ClueCount {
			g[k] -= ridge * w[k]
		}
		return g
	})
}

// barred is a song by its bars.
type barred struct {
	clues [][]float64 // those of beat/phrase and a 1
	known []float64   // certain, -certain or, where two phrases make one section, 0
}

func barsOf(e *example) barred {
	var starts []int
	for i, p := range e.position {
		if p == 1 && i+e.meter() <= len(e.position) {
			starts = append(starts, i)
		}
	}
	if len(e.phrases) == 0 || len(starts) == 0 {
		return barred{}
	}
	var asked []score.Section
	for _, i := range starts {
		asked = append(asked, score.Section{Time: e.beats[i]})
	}
	clues := phrase.Clues(e.sound, starts, e.meter())
	var b barred
	for i, verdict := range score.Starts(e.phrases, asked, e.beats) {
		row := []float64{}
		for k := range clues {
			row = append(row, clues[k][i])
		}
		b.clues = append(b.clues, append(row, 1))
		b.known = append(b.known, map[score.Verdict]float64{score.Right: certain, score.Wrong: -certain}[verdict])
	}
	return b
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

func softmax(x []float64) []float64 {
	out, sum := make([]float64, len(x)), 0.0
	for i, v := range x {
		out[i] = math.Exp(v)
		sum += out[i]
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}
