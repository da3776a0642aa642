// Command charts makes a set of songs with truth from folders that hold charts
// and their sound: it finds the pairs, holds each chart against the onsets of
// its sound, and writes those that fit, with beats and sections in the timeline
// of the sound.
//
// sources.tsv names the folders. The music is never part of the repository.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"
)

func main() {
	list := flag.String("sources", "beat/learn/charts/sources.tsv", "table of the folders, and the part each goes to")
	out := flag.String("o", "", "write the songs to this `folder`; without it only list how charts fit")
	only := flag.String("only", "", "only folders whose name contains this")
	flag.Parse()
	if flag.NArg() != 1 || *only != "" && *out != "" {
		fmt.Fprintln(os.Stderr, "charts: usage: charts [-sources FILE] [-only NAME | -o DIR] FOLDER-OF-FOLDERS")
		os.Exit(2)
	}
	if err := run(flag.Arg(0), *list, *out, *only); err != nil {
		fmt.Fprintln(os.Stderr, "charts: error:", err)
		os.Exit(1)
	}
}

// run makes the set. Songs that do not fit are listed and left out.
func run(root, list, out, only string) error {
	sources, err := readSources(list)
	if err != nil {
		return err
	}
	var pairs []pair
	for _, s := range sources {
		if !strings.Contains(s.name, only) {
			continue
		}
		found, err := findPairs(filepath.Join(root, s.name), s)
		if err != nil {
			return err
		}
		fmt.Printf("%s: %d charts with their sound\n", s.name, len(found))
		pairs = append(pairs, found...)
	}
	pairs = once(pairs)
	songs := make([]*song, len(pairs))
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range pairs {
		group.Go(func() error {
			s, err := p.fit(out)
			if err != nil {
				fmt.Printf("  %-40s left out: %v\n", p.id, err)
				return nil
			}
			songs[i] = s
			fmt.Printf("  %-40s %7.2f BPM  %+4.0f ms  fits %.2f  %s\n", p.id, s.bpm, 1000*s.offset, s.share, s.reject)
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return err
	}
	songs = slices.DeleteFunc(songs, func(s *song) bool { return s == nil || s.reject != "" })
	fmt.Printf("%d of %d fit\n", len(songs), len(pairs))
	if out == "" {
		return nil
	}
	return writeTables(out, songs)
}

// once keeps the first of songs of one name: folders hold the same songs, and
// no song may lie in two parts.
func once(pairs []pair) []pair {
	seen := map[string]bool{}
	return slices.DeleteFunc(pairs, func(p pair) bool {
		_, name, _ := strings.Cut(p.id, "_")
		name = strings.ReplaceAll(name, "-", "")
		twice := seen[name]
		seen[name] = true
		return twice
	})
}
