package main

import (
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// evenWithin is how far counts of one tempo are from their median interval [s];
// the truth is written to 0.1 ms.
const evenWithin = 0.0003

// manifest writes manifest.tsv for a folder of rendered music, as cmd/bench
// takes it: what each track is, its tempo, and what of it is in doubt.
func manifest(args []string) error {
	f := flag.NewFlagSet("manifest", flag.ExitOnError)
	list := f.String("songs", "beat/learn/songs.tsv", "the list it was rendered from")
	f.Parse(args)
	dir := f.Arg(0)
	if dir == "" {
		return errors.New("no folder named")
	}
	items, err := readItems(*list)
	if err != nil {
		return err
	}
	var out strings.Builder
	out.WriteString("id\tsource\tstyle\tbpm\tbpm_kind\tdoubt\n")
	rows := 0
	for _, it := range items {
		period, even, err := tempoOf(filepath.Join(dir, it.ID+".beats"))
		if errors.Is(err, os.ErrNotExist) || err == nil && period == 0 { // not rendered, or without a beat
			continue
		}
		if err != nil {
			return err
		}
		kind := "drift"
		if even {
			kind = "constant"
		}
		fmt.Fprintf(&out, "%s\t%s\t%s\t%.3f\t%s\t%s\n", it.ID, it.Kind, it.Source, 60/period, kind, it.Doubt(60/period))
		rows++
	}
	if rows == 0 {
		return fmt.Errorf("%s: no .beats of %s", dir, *list)
	}
	return os.WriteFile(filepath.Join(dir, "manifest.tsv"), []byte(out.String()), 0o644)
}

// tempoOf reads the truth of a track: its median interval [s], 0 where it has
// no beats, and whether it keeps one tempo.
func tempoOf(file string) (period float64, even bool, err error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return 0, false, err
	}
	var intervals []float64
	last := math.NaN()
	for line := range strings.Lines(string(text)) {
		var t float64
		if _, err := fmt.Sscan(line, &t); err != nil {
			return 0, false, fmt.Errorf("%s: %q: %w", file, line, err)
		}
		if !math.IsNaN(last) {
			intervals = append(intervals, t-last)
		}
		last = t
	}
	if len(intervals) == 0 {
		return 0, false, nil
	}
	slices.Sort(intervals)
	period = intervals[len(intervals)/2]
	return period, intervals[len(intervals)-1]-period < evenWithin && period-intervals[0] < evenWithin, nil
}
