// Command bench measures the analysis against music whose beats are known.
//
// It takes a folder of audio files, each with ID.beats (lines of seconds, tab,
// beat in bar) and perhaps ID.phrases (seconds, tab, counts) beside it, and a
// manifest.tsv with columns id, source, style, bpm, bpm_kind and doubt, of music
// with charts also maker and vocals. ID.sections (seconds, tab, name) says where
// a chart marks a part. It prints one line a group: by source, maker, vocals,
// style, tempo band, trust, and overall; then what the analysis costs.
//
// Where the folder has a file looked.tsv, every run over it adds a line there,
// and the tables say how often the set was looked at. With -cost it prints only that: of a few of the folder, or
// of each of the files named.
package main

import (
	"flag"
	"fmt"
	"os"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat"
	"onphrase/beat/decode"
)

func main() {
	audio := flag.String("audio", "../shared/corpus", "folder of audio files with .beats beside them")
	table := flag.String("csv", "", "write one line a track to this file")
	mode := flag.String("decoder", "auto", "auto, builtin or ffmpeg")
	tempi := flag.String("bpm", "", "only songs of these tempi, as 85-180; all without it")
	left := flag.String("without", "", "stages to leave out, with commas between: "+stageNames())
	only := flag.Bool("cost", false, "only measure the cost, of each of the files named or of a few of the folder")
	tables := flag.Bool("tables", false, "only the tables, without the cost")
	alone := flag.String("alone", "", "analyse only this `file` and print its length: what the cost is measured on")
	first := flag.Float64("first", 0, "with -alone: only so many seconds of it; 0: all")
	deaf := flag.Bool("deaf", false, "with -alone: only decode it")
	flag.Parse()
	roomy()
	var err error
	switch {
	case *alone != "":
		err = analyseAlone(os.Stdout, *alone, decode.Mode(*mode), *first, *deaf)
	case *only:
		err = costOf(*audio, flag.Args())
	default:
		err = run(*audio, *table, *mode, *left, *tempi, *tables)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "bench: error:", err)
		os.Exit(1)
	}
}

func run(audio, table, mode, left, tempi string, tablesOnly bool) error {
	decoder, err := decode.ParseMode(mode)
	if err != nil {
		return err
	}
	without, err := parseStages(left)
	if err != nil {
		return err
	}
	songs, err := findSongs(audio)
	if err != nil {
		return err
	}
	if songs, err = ofTempi(songs, tempi); err != nil {
		return err
	}
	looks, err := look(audio, len(songs), left, tempi)
	if err != nil {
		return err
	}
	results := make([]result, len(songs))
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	before := cpuSeconds()
	for i, s := range songs {
		group.Go(func() error {
			r, err := measure(s, decoder, without)
			if err != nil {
				return err
			}
			results[i] = r
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return err
	}
	report(os.Stdout, results, cpuSeconds()-before)
	fmt.Print(looks)
	if table != "" {
		if err := writeCSV(table, results); err != nil {
			return err
		}
	}
	if tablesOnly {
		return nil
	}
	return costOfSome(songs)
}

// costOf measures the cost of each of the files, or of a few of a folder where
// none are named.
func costOf(folder string, files []string) error {
	if len(files) > 0 {
		return reportCost(os.Stdout, files, true)
	}
	songs, err := findSongs(folder)
	if err != nil {
		return err
	}
	return costOfSome(songs)
}

// costOfSome measures the cost of a few songs, and the memory for the longest.
func costOfSome(songs []song) error {
	if err := reportCost(os.Stdout, some(songs), false); err != nil {
		return err
	}
	return reportMemory(os.Stdout, largest(filesOf(songs)))
}

// stageNames lists what can be left out.
func stageNames() string {
	var names []string
	for _, s := range beat.Stages {
		names = append(names, string(s))
	}
	return strings.Join(names, ",")
}

func parseStages(list string) ([]beat.Stage, error) {
	var left []beat.Stage
	for name := range strings.SplitSeq(list, ",") {
		switch s := beat.Stage(name); {
		case name == "":
		case !slices.Contains(beat.Stages, s):
			return nil, fmt.Errorf("-without: no stage %q; there are %s", name, stageNames())
		default:
			left = append(left, s)
		}
	}
	return left, nil
}
