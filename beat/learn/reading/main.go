// Command reading fits the weights by which package reading chooses among the
// ways of counting a piece of music:
//
//	go run ./beat/learn/reading -o beat/reading/weights.go DIR
//
// DIR holds music whose counts are known: ID.wav and ID.beats (lines of
// seconds, tab, beat in bar), as `make render -sound` writes them.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/beat/score"
)

func main() {
	out := flag.String("o", "", "write the weights to this file")
	check := flag.String("check", "", "folder of other music to say how good the weights are")
	ridge := flag.Float64("ridge", 0.03, "penalty on the squares of the standardised weights")
	flag.Parse()
	if err := run(flag.Arg(0), *check, *out, *ridge); err != nil {
		fmt.Fprintln(os.Stderr, "reading: error:", err)
		os.Exit(1)
	}
}

func run(dir, check, out string, ridge float64) error {
	train, err := collect(dir)
	if err != nil {
		return err
	}
	weights := fit(train, ridge)
	fmt.Printf("%d stretches: F %.3f\n", len(train), goodness(train, weights))
	if check != "" {
		other, err := collect(check)
		if err != nil {
			return err
		}
		fmt.Printf("%d other stretches: F %.3f\n", len(other), goodness(other, weights))
	}
	if out == "" {
		return nil
	}
	return os.WriteFile(out, source(weights), 0o644)
}

// example is a stretch of music: each way of counting it, and how right it is.
type example struct {
	clues [][]float64
	f     []float64 // F-measure of each, 0-1
}

const (
	fewestCounts = 10   // of a stretch that can teach anything
	window       = 0.07 // of the F-measure [s]
	edge         = 0.1  // of the truth, to either side [s]
)

// collect reads a folder; the order is that of the names.
func collect(dir string) ([]example, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.wav"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("%s: no .wav files", dir)
	}
	found := make([][]example, len(files))
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, file := range files {
		group.Go(func() (err error) {
			found[i], err = examples(file)
			return err
		})
	}
	if err := group.Wait(); err != nil {
		return nil, err
	}
	var all []example
	for _, e := range found {
		all = append(all, e...)
	}
	return all, nil
}

// examples are the stretches of one track.
func examples(file string) ([]example, error) {
	truth, err := counts(strings.TrimSuffix(file, ".wav") + ".beats")
	if err != nil || len(truth) < fewestCounts { // sounds without a beat teach nothing
		return nil, err
	}
	stream, err := decode.Open(file, decode.Builtin)
	if err != nil {
		return nil, err
	}
	defer stream.Close()
	stretches, err := beat.Readings(stream)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	var all []example
	for _, readings := range stretches {
		first, last := readings[0].Beats[0], readings[0].Beats[len(readings[0].Beats)-1]
		ref := between(truth, first, last)
		if len(ref) < fewestCounts {
			continue
		}
		var e example
		for _, r := range readings {
			e.clues = append(e.clues, r.Clues)
			e.f = append(e.f, score.FMeasure(ref, between(r.Beats, ref[0]-edge, ref[len(ref)-1]+edge), window))
		}
		all = append(all, e)
	}
	return all, nil
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
