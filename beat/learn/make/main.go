// Command make prepares the music that the ear is trained on: it arranges,
// plans, renders, and measures the sound with the front-end that listens later.
package main

import (
	"fmt"
	"os"
)

func main() {
	steps := map[string]func([]string) error{"wad": wad, "arrange": arrange, "phrased": phrased, "plain": plain,
		"plan": plan, "render": render, "frames": measured, "manifest": manifest}
	if len(os.Args) < 2 || steps[os.Args[1]] == nil {
		fmt.Fprintln(os.Stderr, "usage: make wad|arrange|phrased|plain|plan|render|frames|manifest [flags]")
		os.Exit(2)
	}
	if err := steps[os.Args[1]](os.Args[2:]); err != nil {
		fmt.Fprintf(os.Stderr, "make %s: %v\n", os.Args[1], err)
		os.Exit(1)
	}
}
