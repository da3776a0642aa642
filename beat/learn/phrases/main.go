// Command phrases makes songs whose phrases are known, and fits to them the
// weights by which beat/bar and beat/phrase weigh what they hear.
package main

import (
	"fmt"
	"os"
)

func main() {
	steps := map[string]func([]string) error{
		"make": makeSongs, "hear": hearAll, "report": report, "real": real, "bars": bars, "fit": fit, "trust": trust,
		"sure": sure,
	}
	if len(os.Args) < 2 || steps[os.Args[1]] == nil {
		fmt.Fprintln(os.Stderr, "usage: phrases make|hear|bars|fit|trust|sure|report|real [flags]")
		os.Exit(2)
	}
	if err := steps[os.Args[1]](os.Args[2:]); err != nil {
		fmt.Fprintf(os.Stderr, "phrases %s: %v\n", os.Args[1], err)
		os.Exit(1)
	}
}

// hearAll listens to the songs of some folders and keeps what it heard.
func hearAll(args []string) error {
	_, err := examples(args)
	return err
}
