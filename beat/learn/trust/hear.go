package main

import (
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

// heard is a track as the analysis hears it, with its truth.
type heard struct {
	id     string
	truth  []float64 // [s]; none where there is no beat
	claims []beat.Claim
	sure   float64 // mean activation of the ear on its counts, 0-1
}

// goodF is the F from which beats are right.
const goodF = 0.9

// right reports whether the beats of the whole track are.
func (h heard) right() bool {
	var beats []float64
	for _, c := range h.claims {
		for _, t := range c.Beats {
			if n := len(beats); n == 0 || t > beats[n-1]+0.05 { // two stretches may share a count
				beats = append(beats, t)
			}
		}
	}
	return score.Beats(h.truth, beats).F >= goodF
}

// hearAll hears a folder in the order of names.
func hearAll(folder string) ([]heard, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.beats"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("%s: no .beats files", folder)
	}
	all := make([]heard, len(files))
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, file := range files {
		group.Go(func() (err error) {
			all[i], err = hear(strings.TrimSuffix(file, ".beats"))
			return err
		})
	}
	return all, group.Wait()
}

// hear hears one track by its path without the ending.
func hear(stem string) (heard, error) {
	h := heard{id: filepath.Base(stem)}
	text, err := os.ReadFile(stem + ".beats")
	if err != nil {
		return h, err
	}
	for line := range strings.Lines(string(text)) {
		var t float64
		if n, _ := fmt.Sscan(line, &t); n == 1 {
			h.truth = append(h.truth, t)
		}
	}
	for _, ending := range []string{".wav", ".mp3"} {
		if _, err := os.Stat(stem + ending); err == nil {
			return h, h.listen(stem + ending)
		}
	}
	return h, fmt.Errorf("%s: no .wav or .mp3 beside the .beats", stem)
}

func (h *heard) listen(file string) error {
	stream, err := decode.Open(file, decode.Builtin)
	if err != nil {
		return err
	}
	defer stream.Close()
	if h.claims, h.sure, err = beat.Claims(stream); err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	return nil
}
