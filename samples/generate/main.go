// Command generate makes the demo's music: it renders every song of the demo,
// encodes it with lame and writes its exact truth beside it. Run it in the
// root of the repository:
//
//	go run ./samples/generate              all songs
//	go run ./samples/generate slow-ferry   only these
//
// The same source gives the same files with the same version of lame (3.100)
// on the same kind of processor.
package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"onphrase/samples/synth"
)

// folder is where the music goes, from the root of the repository.
const folder = "samples/demo/music"

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "generate:", err)
		if errors.Is(err, exec.ErrNotFound) {
			fmt.Fprintln(os.Stderr, "hint: install the MP3 encoder lame (on Debian: apt install lame)")
		}
		os.Exit(1)
	}
}

// run makes the songs named, or all.
func run(names []string) error {
	for _, n := range names {
		if !slices.ContainsFunc(songs, func(t track) bool { return t.file == n }) {
			return fmt.Errorf("no song %q", n)
		}
	}
	if _, err := os.Stat(folder); err != nil {
		return fmt.Errorf("%w (run it in the root of the repository)", err)
	}
	for _, t := range songs {
		if len(names) > 0 && !slices.Contains(names, t.file) {
			continue
		}
		if err := t.make(filepath.Join(folder, t.file)); err != nil {
			return fmt.Errorf("%s: %w", t.file, err)
		}
	}
	return nil
}

// make writes base.mp3, base.beats and base.phrases.
func (t track) make(base string) error {
	sound := synth.Render(t.song)
	if err := t.encode(sound, base+".mp3"); err != nil {
		return err
	}
	truth := t.song.Truth()
	if err := os.WriteFile(base+".beats", []byte(beatLines(truth)), 0o644); err != nil {
		return err
	}
	if err := os.WriteFile(base+".phrases", []byte(phraseLines(truth)), 0o644); err != nil {
		return err
	}
	fmt.Fprintf(os.Stderr, "%-22s %5.1f s  %g BPM\n", base+".mp3", sound.Duration(), t.song.BPM)
	return nil
}

// encode runs lame. Mono, because the way from studio loudspeakers to ears is
// mono, and small; lame writes its header with the encoder's delay, so that
// the decoded timeline is the rendered one.
func (t track) encode(s *synth.Sound, file string) error {
	var wav bytes.Buffer
	if err := s.WriteWAV(&wav, 1); err != nil {
		return err
	}
	args := []string{"--quiet", "-m", "m", "--id3v2-only", "--tt", t.song.Title, "--ta", artist, "--tl", album}
	args = append(args, t.quality...)
	part := file + ".part" // a run that fails leaves the file as it was
	cmd := exec.Command("lame", append(args, "-", part)...)
	cmd.Stdin = &wav
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		os.Remove(part)
		return fmt.Errorf("lame: %w", err)
	}
	return os.Rename(part, file)
}

// beatLines is the truth of the beats: seconds, a tab, the beat in its bar.
func beatLines(t synth.Truth) string {
	var b strings.Builder
	for _, beat := range t.Beats {
		fmt.Fprintf(&b, "%.6f\t%d\n", beat.Time, beat.InBar)
	}
	return b.String()
}

// phraseLines is the truth of the phrases: seconds, counts and label, with
// tabs between.
func phraseLines(t synth.Truth) string {
	var b strings.Builder
	for _, p := range t.Phrases {
		fmt.Fprintf(&b, "%.6f\t%d\t%s\n", p.Time, p.Counts, p.Label)
	}
	return b.String()
}
