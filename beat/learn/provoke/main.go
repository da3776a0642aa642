// Command provoke makes songs that are hard to count though each keeps to one
// tempo to the sample: sections in which only the off-beats sound, bass drums
// that suggest another tempo, waltzes in many makes; and mixes of them. Each
// comes as ID.wav with ID.beats, and ID.phrases or (mixes) ID.songs: where each
// song begins, where it has taken over [s], its tempo [1/min].
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"onphrase/beat/learn/score"
)

// kinds are what can be made, by name.
var kinds = map[string]func(score.Rand) spec{
	"offbeats": offbeats, "cross": cross, "sparse": sparse, "late": late, "waltz": waltz,
}

func main() {
	kind := flag.String("kind", "offbeats", "offbeats, cross, sparse, late, waltz or mix")
	n := flag.Int("n", 10, "how many")
	seed := flag.Uint64("seed", 1, "of the first one")
	out := flag.String("o", "", "folder for them")
	flag.Parse()
	if err := run(*kind, *n, *seed, *out); err != nil {
		fmt.Fprintln(os.Stderr, "provoke:", err)
		os.Exit(1)
	}
}

func run(kind string, n int, seed uint64, out string) error {
	if kinds[kind] == nil && kind != "mix" {
		return fmt.Errorf("no kind %q", kind)
	}
	if _, err := exec.LookPath("fluidsynth"); err != nil {
		return err
	}
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	rows := []string{"id\tsource\tstyle\tmeter\tbpm\tbpm_kind\tdoubt"}
	for i := range n {
		s := seed + uint64(i)
		r := score.NewRand(s, 77)
		row, err := "", error(nil)
		if kind == "mix" {
			row, err = mix(s, out, r)
		} else {
			row, err = song(kind, s, out, r)
		}
		if err != nil {
			return err
		}
		rows = append(rows, row)
	}
	return os.WriteFile(filepath.Join(out, "manifest.tsv"), []byte(strings.Join(rows, "\n")+"\n"), 0o644)
}

// song makes one song and gives its row of the manifest.
func song(kind string, seed uint64, dir string, r score.Rand) (string, error) {
	s := kinds[kind](r)
	id := fmt.Sprintf("%s%03d", kind, seed)
	notes := s.compose(r)
	x, err := s.render(notes, seed)
	if err != nil {
		return "", err
	}
	var phrases strings.Builder
	at := 0
	for _, sec := range s.sections {
		fmt.Fprintf(&phrases, "%.4f\t%d\t%s\n", notes.Beats[at].Time, sec.counts, sec.name)
		at += sec.counts
	}
	name := filepath.Join(dir, id)
	if err := os.WriteFile(name+".phrases", []byte(phrases.String()), 0o644); err != nil {
		return "", err
	}
	row := fmt.Sprintf("%s\t%s\t%s\t%d\t%.3f\tconstant\t", id, kind, kind, s.meter, s.bpm)
	return row, write(name, x, notes.Beats)
}
