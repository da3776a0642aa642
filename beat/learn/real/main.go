// Command real holds our counts against those of programs that are not ours,
// on recordings whose true counts nobody has written down.
//
//	go run ./beat/learn/real DIR
//
// DIR is what collect.sh and follow.sh filled: DIR/ours/ID.json as
// `onphrase analyze --json` prints it, DIR/FOLLOWER/ID.beats for every other
// program [s, one count a line], and DIR/truth/ID.beats for the songs whose tempo is known.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	table := flag.String("tracks", filepath.FromSlash("beat/learn/real/tracks.tsv"), "list of the tracks")
	flag.Parse()
	if err := run(*table, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "real:", err)
		os.Exit(1)
	}
}

func run(table, dir string) error {
	all, err := readTracks(table, dir)
	if err != nil {
		return err
	}
	var known, music, none []track
	for _, t := range all {
		switch t.kind {
		case "mapped":
			known = append(known, t)
			music = append(music, t)
		case "music":
			music = append(music, t)
		case "none":
			none = append(none, t)
		default:
			return fmt.Errorf("%s: %s: kind %q is none of mapped, music, none", table, t.id, t.kind)
		}
	}
	reportKnown(os.Stdout, known)
	judged := judge(music)
	reportGroups(os.Stdout, "package", judged, func(j judgement) string { return j.pack })
	reportGroups(os.Stdout, "all", judged, func(judgement) string { return "all" })
	reportTrust(os.Stdout, judged)
	reportOthers(os.Stdout, music)
	reportDisagreements(os.Stdout, judged)
	reportNone(os.Stdout, none)
	return nil
}
