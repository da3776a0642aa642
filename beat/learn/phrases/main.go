// Command phrases makes songs whose phrases are known, and fits to them the
// weights by which beat/bar and beat/phrase weigh what they hear.
package main

import (
	"fmt"
	"os"
)

func main() {
	steps := map[string]func([]string) error{"make": makeSongs, "bars": bars, "fit": fit, "trust": trust}
	if len(os.Args) < 2 || steps[os.Args[1]] == nil {
		fmt.Fprintln(os.Stderr, "usage: phrases make|bars|fit|trust [flags]")
		os.Exit(2)
	}
	if err := steps[os.Args[1]](os.Args[2:]); err != nil {
		fmt.Fprintf(os.Stderr, "phrases %s: %v\n", os.Args[1], err)
		os.Exit(1)
	}
}
