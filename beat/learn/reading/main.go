// Command reading fits the weights by which package reading chooses among the
// ways of counting a piece of music:
//
//	go run ./beat/learn/reading -o beat/reading/weights.go -known KNOWN DIR...
//
// The folders hold music whose counts are known: ID.wav and ID.beats (lines of
// seconds, tab, beat in bar), as `make render -sound` writes them. In KNOWN is
// music that the ear was trained on: it teaches only how to weigh the sound,
// for the ear is surer there than it will be of other music.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/beat/reading"
	"onphrase/beat/score"
)

func main() {
	out := flag.String("o", "", "write the weights to this file")
	known := flag.String("known", "", "folder of music that the ear was trained on")
	check := flag.String("check", "", "folder of other music to say how good the weights are")
	ridge := flag.Float64("ridge", 0.03, "penalty on the squares of the standardised weights of the clues by sound")
	ridgeHeard := flag.Float64("ridge-heard", 0.01, "the same of those by the ear")
	flag.Parse()
	if err := run(flag.Args(), *known, *check, *out, *ridge, *ridgeHeard); err != nil {
		fmt.Fprintln(os.Stderr, "reading: error:", err)
		os.Exit(1)
	}
}

func run(dirs []string, known, check, out string, ridge, ridgeHeard float64) error {
	teach, err := collect(dirs...)
	if err != nil {
		return err
	}
	bySound := teach.bySound
	if known != "" {
		more, err := collect(known)
		if err != nil {
			return err
		}
		bySound = slices.Concat(bySound, more.bySound)
	}
	weights := fit(bySound, ridge)
	heard := weighed(teach.heard, weights)
	heardWeights := fit(heard, ridgeHeard)
	fmt.Printf("by sound, %d stretches: F %.3f, in cross-validation %.3f\n", len(bySound), goodness(bySound, weights),
		crossValidated(bySound, ridge))
	fmt.Printf("by the ear, %d stretches: F %.3f, in cross-validation %.3f\n", len(heard), goodness(heard, heardWeights),
		crossValidated(heard, ridgeHeard))
	if check != "" {
		other, err := collect(check)
		if err != nil {
			return err
		}
		fmt.Printf("other music: F %.3f by sound, %.3f by the ear\n", goodness(other.bySound, weights),
			goodness(weighed(other.heard, weights), heardWeights))
	}
	if out == "" {
		return nil
	}
	text, err := source(weights, heardWeights)
	if err != nil {
		return err
	}
	return os.WriteFile(out, text, 0o644)
}

// example is a stretch of music: each way of counting it, and how right it is.
type example struct {
	piece string // what it is a stretch of
	sound [][]float64
	heard [][]float64 // nil where only the sound was listened to
	clues [][]float64 // what is fitted
	f     []float64   // F-measure of each, 0-1
}

// examples are those that the readings are weighed in, without the ear and with.
type examples struct{ bySound, heard []example }

// weighed are examples by the ear, whose first clue is what all those by sound
// add up to.
func weighed(heard []example, weights []float64) []example {
	out := slices.Clone(heard)
	for i, e := range out {
		out[i].clues = make([][]float64, len(e.heard))
		for k, clues := range e.heard {
			sound := 0.0
			for j, v := range e.sound[k] {
				sound += weights[j] * v
			}
			out[i].clues[k] = append([]float64{sound}, clues...)
		}
	}
	return out
}

const (
	fewestCounts = 10   // of a stretch that can teach anything
	window       = 0.07 // of the F-measure [s]
	edge         = 0.1  // of the truth, to either side [s]
)

// collect reads folders; the order is that of the names.
func collect(dirs ...string) (examples, error) {
	var files []string
	for _, dir := range dirs {
		found, err := filepath.Glob(filepath.Join(dir, "*.wav"))
		if err != nil || len(found) == 0 {
			return examples{}, fmt.Errorf("%s: no .wav files", dir)
		}
		files = append(files, found...)
	}
	if len(files) == 0 {
		return examples{}, errors.New("no folder of music named")
	}
	found := make([]examples, len(files))
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, file := range files {
		group.Go(func() (err error) {
			found[i], err = examplesOf(file)
			return err
		})
	}
	if err := group.Wait(); err != nil {
		return examples{}, err
	}
	var all examples
	for _, e := range found {
		all.bySound = append(all.bySound, e.bySound...)
		all.heard = append(all.heard, e.heard...)
	}
	return all, nil
}

// examplesOf are the stretches of one track.
func examplesOf(file string) (examples, error) {
	truth, err := counts(strings.TrimSuffix(file, ".wav") + ".beats")
	if err != nil || len(truth) < fewestCounts { // sounds without a beat teach nothing
		return examples{}, err
	}
	stream, err := decode.Open(file, decode.Builtin)
	if err != nil {
		return examples{}, err
	}
	defer stream.Close()
	bySound, heard, err := beat.Readings(stream)
	if err != nil {
		return examples{}, fmt.Errorf("%s: %w", file, err)
	}
	return examples{judged(file, bySound, truth), judged(file, heard, truth)}, nil
}

// judged are stretches with how right each of their readings is.
func judged(file string, stretches [][]reading.Reading, truth []float64) []example {
	var all []example
	for _, readings := range stretches {
		if len(readings) == 0 { // nothing begins in it
			continue
		}
		first, last := readings[0].Beats[0], readings[0].Beats[len(readings[0].Beats)-1]
		ref := between(truth, first, last)
		if len(ref) < fewestCounts {
			continue
		}
		e := example{piece: file}
		for _, r := range readings {
			e.sound, e.heard = append(e.sound, r.Clues), append(e.heard, r.Heard)
			e.f = append(e.f, score.FMeasure(ref, between(r.Beats, ref[0]-edge, ref[len(ref)-1]+edge), window))
		}
		e.clues = e.sound
		all = append(all, e)
	}
	return all
}

func between(times []float64, from, to float64) []float64 {
	var out []float64
	for _, t := range times {
		if t >= from && t <= to {
			out = append(out, t)
		}
	}
	return out
}

// counts reads the first column of a .beats file.
func counts(file string) ([]float64, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	var out []float64
	for line := range strings.Lines(string(text)) {
		var t float64
		if n, _ := fmt.Sscan(line, &t); n == 1 {
			out = append(out, t)
		}
	}
	return out, nil
}
