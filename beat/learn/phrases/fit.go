package main

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

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

// fit trains the network of beat/phrase on the songs of some folders, each of
// another maker.
func fit(args []string) error {
	f := flag.NewFlagSet("fit", flag.ExitOnError)
	out := f.String("o", phraseWeights, "file for the weights")
	seed := f.Uint64("seed", 1, "of the first weights")
	hidden := f.Int("hidden", units, "hidden units")
	f.Parse(args)
	var groups [][]lesson
	for _, dir := range f.Args() {
		songs, err := examples([]string{dir})
		if err != nil {
			return err
		}
		if songs, err = allowed(songs, filepath.Join(dir, "manifest.tsv")); err != nil {
			return err
		}
		groups = append(groups, lessons(songs))
	}
	return os.WriteFile(*out, []byte(trainAll(groups, *seed, *hidden).Text()), 0o644)
}

// allowed leaves out the songs that a manifest gives to measurement alone: their
// licence does not say that one may learn from them.
func allowed(songs []*example, manifest string) ([]*example, error) {
	text, err := os.ReadFile(manifest)
	if os.IsNotExist(err) {
		return songs, nil
	}
	if err != nil {
		return nil, err
	}
	lines := strings.Split(string(text), "\n")
	id, use := slices.Index(strings.Split(lines[0], "\t"), "id"), slices.Index(strings.Split(lines[0], "\t"), "use")
	if id < 0 || use < 0 {
		return nil, fmt.Errorf("%s: no columns id and use", manifest)
	}
	var names []string
	for _, line := range lines[1:] {
		if cells := strings.Split(line, "\t"); len(cells) > max(id, use) && cells[use] == "learn" {
			names = append(names, cells[id])
		}
	}
	return slices.DeleteFunc(songs, func(e *example) bool { return !slices.Contains(names, e.name) }), nil
}

// lessons are the songs whose bars are known to be of three or four.
func lessons(songs []*example) []lesson {
	var out []lesson
	for _, e := range songs {
		if e.meter() < 3 {
			continue // of bars in pairs, a phrase may start at the second
		}
		if l := lessonOf(e); len(l.known) > 1 {
			out = append(out, l)
		}
	}
	return out
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

func lessonOf(e *example) lesson {
	var starts []int
	for i, p := range e.position {
		if p == 1 && i+e.meter() <= len(e.position) {
			starts = append(starts, i)
		}
	}
	if len(e.phrases) == 0 && len(starts) > 0 {
		return turned(e, starts)
	}
	if len(starts) == 0 {
		return lesson{}
	}
	var asked []score.Section
	for _, i := range starts {
		asked = append(asked, score.Section{Time: e.beats[i]})
	}
	l := lesson{clues: phrase.Clues(e.sound, starts, e.meter())}
	for _, verdict := range score.Starts(e.phrases, asked, e.beats) {
		// where two phrases make one section, nothing is known
		l.known = append(l.known, map[score.Verdict]float64{score.Right: certain, score.Wrong: -certain}[verdict])
	}
	return l
}

const (
	fewestTurns = 3
	unlikely    = -4 // log-odds of a start that no turn speaks for
	wholeBars   = 8  // in a whole phrase
)

// turned is a lesson of a record of which is only known where another one
// sings: phrases start on such a turn, or whole phrases before or after one.
func turned(e *example, starts []int) lesson {
	var turns []int
	for i, s := range starts {
		if e.onTurn(e.beats[s]) {
			turns = append(turns, i)
		}
	}
	if len(turns) < fewestTurns {
		return lesson{}
	}
	l := lesson{clues: phrase.Clues(e.sound, starts, e.meter()), known: make([]float64, len(starts))}
	for k, t := range turns[:len(turns)-1] {
		for i := t + 1; i < turns[k+1]; i++ {
			if (i-t)%wholeBars != 0 && (turns[k+1]-i)%wholeBars != 0 {
				l.known[i] = unlikely
			}
		}
	}
	return l
}

// onTurn reports whether another one sings from a time on [s].
func (e *example) onTurn(t float64) bool {
	return slices.ContainsFunc(e.marks, func(m mark) bool {
		return m.name == turn && math.Abs(m.time-t) < onCount*e.count()
	})
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
