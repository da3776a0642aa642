// Command trust fits the weights by which package beat trusts its counts:
//
//	go run ./beat/learn/trust [-o beat/trust_weights.go] DIR [REPORT ...]
//
// Each folder holds music whose counts are known: ID.wav or ID.mp3, and
// ID.beats (lines of seconds, tab, beat in bar; nothing where there is no
// beat), as `make render -sound` writes them. It fits to the first and says
// how good the trust is on all of them.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	out := flag.String("o", "", "write the weights to this file")
	ridge := flag.Float64("ridge", 1, "penalty on the squares of the standardised weights")
	flag.Parse()
	if err := run(flag.Args(), *out, *ridge); err != nil {
		fmt.Fprintln(os.Stderr, "trust: error:", err)
		os.Exit(1)
	}
}

func run(folders []string, out string, ridge float64) error {
	if len(folders) == 0 {
		return fmt.Errorf("no folder of music named")
	}
	var weights []float64
	for i, folder := range folders {
		tracks, err := hearAll(folder)
		if err != nil {
			return err
		}
		if i == 0 {
			weights = fit(examples(tracks), ridge)
			fmt.Printf("weights %.4g\n", weights)
		}
		report(os.Stdout, filepath.Base(folder), tracks, weights, i == 0, ridge)
	}
	if out == "" {
		return nil
	}
	return os.WriteFile(out, source(weights), 0o644)
}
