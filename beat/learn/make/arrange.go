package main

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"

	"onphrase/beat/learn"
	"onphrase/beat/learn/score"
)

var (
	defGroove   = regexp.MustCompile(`(?i)^\s*DefGroove\s+(\S+)`)
	secondChord = regexp.MustCompile(` / \S+`)
)

// arrange writes two arrangements for every file of mma's groove library.
func arrange(args []string) error {
	f := flag.NewFlagSet("arrange", flag.ExitOnError)
	library := f.String("library", "/usr/share/mma/lib", "mma's groove library")
	out := f.String("o", "", "folder for the MIDI files")
	f.Parse(args)
	if err := os.MkdirAll(*out, 0o755); err != nil {
		return err
	}
	seed := uint64(0)
	return filepath.WalkDir(*library, func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".mma" {
			return err
		}
		family, err := grooves(*library, path)
		if err != nil || len(family) == 0 {
			return err
		}
		for version := range 2 {
			seed++
			name := strings.TrimSuffix(filepath.Base(path), ".mma")
			mid := filepath.Join(*out, fmt.Sprintf("%s-%s-%d.mid", filepath.Base(filepath.Dir(path)), name, version+1))
			runMMA(mid, sheet(score.NewRand(seed, 5), family))
		}
		return nil
	})
}

// grooves lists those of a library file that may be trained on, as mma wants
// them named.
func grooves(library, path string) ([]string, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	prefix := ""
	if dir := filepath.Base(filepath.Dir(path)); dir != "stdlib" {
		prefix = dir + ":"
	}
	var out []string
	for line := range strings.Lines(string(text)) {
		if m := defGroove.FindStringSubmatch(line); m != nil && !learn.IsHeldOut("groove", prefix+m[1]) {
			out = append(out, prefix+m[1])
		}
	}
	return out, nil
}

var progressions = [][]string{
	{"C", "Am", "F", "G7"}, {"Am", "F", "C", "G"}, {"C", "F", "G", "F"}, {"Dm7", "G7", "CM7", "Am7"}, {"C", "C", "F", "C"},
	{"F", "C", "G7", "C"}, {"Em", "C", "G", "D"}, {"Am", "G", "F", "E7"}, {"C", "G", "Am", "F"}, {"C7", "C7", "F7", "C7"},
	{"Bm", "G", "D", "A"}, {"CM7", "Bm7", "Am7", "D7"}, {"Cm", "Ab", "Eb", "Bb"}, {"C", "D", "F", "C"},
	{"Gm", "Cm", "D7", "Gm"},
}

// sheet is an mma source with 24 to 40 bars over the grooves of one family.
func sheet(r score.Rand, family []string) string {
	var intros, ends, bodies []string
	for _, g := range family {
		switch low := strings.ToLower(g); {
		case strings.HasSuffix(low, "intro"):
			intros = append(intros, g)
		case strings.HasSuffix(low, "end"):
			ends = append(ends, g)
		default:
			bodies = append(bodies, g)
		}
	}
	if len(bodies) == 0 {
		bodies = family
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Tempo 120\nSeqRnd Off\nRndSeed %d\n", r.IntN(1e6))
	prog := score.Pick(r, progressions)
	bar := 0
	play := func(groove string, bars int) {
		fmt.Fprintf(&b, "Groove %s\n", groove)
		for range bars {
			chord := prog[bar%len(prog)]
			if r.Chance(0.15) {
				chord = chord + " / " + score.Pick(r, prog)
			}
			bar++
			fmt.Fprintf(&b, "%d %s\n", bar, chord)
		}
	}
	if len(intros) > 0 && r.Chance(0.5) {
		play(score.Pick(r, intros), 4)
	}
	for total := 24 + 4*r.IntN(5); bar < total; {
		if r.Chance(0.3) {
			prog = score.Pick(r, progressions)
		}
		play(score.Pick(r, bodies), score.Pick(r, []int{4, 4, 8}))
	}
	if len(ends) > 0 && r.Chance(0.5) {
		play(score.Pick(r, ends), 2)
	}
	return b.String()
}

// runMMA leaves out what mma cannot arrange, and says so.
func runMMA(mid, source string) {
	src := strings.TrimSuffix(mid, ".mid") + ".mma"
	if err := os.WriteFile(src, []byte(source), 0o644); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return
	}
	defer os.Remove(src)
	text, err := exec.Command("mma", "-f", mid, src).CombinedOutput()
	if err != nil { // two chords are too many for some meters
		source = secondChord.ReplaceAllString(source, "")
		if os.WriteFile(src, []byte(source), 0o644) == nil {
			text, err = exec.Command("mma", "-f", mid, src).CombinedOutput()
		}
	}
	if err != nil {
		fmt.Fprintf(os.Stderr, "arrange: %s: %v: %.200s\n", filepath.Base(mid), err, text)
	}
}
