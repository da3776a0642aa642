package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
)

// correctionEnding ends the name of the file, beside a track, in which a person
// corrects what was heard in it.
const correctionEnding = ".onphrase.yaml"

// correctionLimit is the largest such file read [bytes].
const correctionLimit = 1 << 20

// corrected is what a person has corrected of a track, and where that is kept.
type corrected struct {
	path  string        // of the file, or where it will be; empty when there is no place
	file  *correct.File // nil when nothing was ever corrected
	notes []string      // what she should know about it
}

// correctionsOf finds the corrections of a track: in the file beside it, else
// in the user's own folder. A file that cannot be understood, or that belongs
// to another sound, is an error: music whose corrections were left out without
// a word would send a class astray.
func correctionsOf(track string) (corrected, error) {
	beside := track + correctionEnding
	own := ownCorrections(track)
	src, err := disk.ReadLimited(beside, correctionLimit)
	switch {
	case err == nil:
		c := corrected{path: beside}
		if c.file, err = readCorrections(beside, src, track); err != nil {
			return c, err
		}
		if _, err := os.Stat(own); own != "" && err == nil {
			c.notes = append(c.notes, fmt.Sprintf("corrected in %s; what %s says is left out", beside, own))
		}
		return c, nil
	case !errors.Is(err, fs.ErrNotExist):
		return corrected{path: beside}, fmt.Errorf("%s: %s", beside, told.Reason(err))
	case own == "":
		return corrected{path: beside}, nil
	}
	src, err = disk.ReadLimited(own, correctionLimit)
	if errors.Is(err, fs.ErrNotExist) {
		return corrected{path: beside}, nil
	}
	c := corrected{path: own}
	if err != nil {
		return c, fmt.Errorf("%s: %s", own, told.Reason(err))
	}
	c.file, err = readCorrections(own, src, track)
	return c, err
}

// readCorrections understands a file and holds it to the track's sound.
func readCorrections(path string, src []byte, track string) (*correct.File, error) {
	file, problems := correct.Parse(src)
	if len(problems) > 0 {
		lines := make([]string, len(problems))
		for i, p := range problems {
			lines[i] = p.In(path)
		}
		return nil, errors.New(strings.Join(lines, "\n"))
	}
	sound, err := decode.Identity(track)
	if err != nil {
		return nil, err
	}
	if sound != file.Sound {
		return nil, fmt.Errorf("%s was made for another recording, called %s; move it away, or put that recording back", path, file.Track)
	}
	return file, nil
}

// ownCorrections is the file in the user's folder that belongs to the sound of
// a track, for music that lies where nothing can be written. Empty where the
// folder was never needed.
func ownCorrections(track string) string {
	dir := correctionFolder()
	if _, err := os.Stat(dir); dir == "" || err != nil {
		return ""
	}
	sound, err := decode.Identity(track)
	if err != nil {
		return "" // no sound, no corrections
	}
	return ownPath(dir, sound)
}

func ownPath(dir, sound string) string {
	return filepath.Join(dir, strings.TrimPrefix(sound, "sha256:")+correctionEnding)
}

// correctionFolder is the user's own folder for corrections, empty where she
// has none.
func correctionFolder() string { return disk.OwnFile("", "corrections") }

// save writes the corrections where they are kept; new ones beside the track
// or, where that cannot be written, into the user's own folder.
func (c *corrected) save() error {
	src, err := c.file.Bytes()
	if err != nil {
		return err
	}
	err = disk.WriteWhole(c.path, src)
	if err == nil {
		return nil
	}
	dir := correctionFolder()
	if _, there := os.Stat(c.path); there == nil || dir == "" {
		return told.Failed("", "cannot write %s: %s", c.path, told.Reason(err))
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return told.Failed("", "cannot write %s: %s", dir, told.Reason(err))
	}
	c.path = ownPath(dir, c.file.Sound)
	return disk.Wrote(c.path, disk.WriteWhole(c.path, src))
}

// says tells whether she has said before what a correction says: the same, or
// that a phrase starts at that count.
func (c *corrected) says(fix correct.Correction) bool {
	const same = 0.0005 // [s] half of the step in which times are kept
	starts := []correct.Kind{correct.One, correct.Phrase}
	return slices.ContainsFunc(c.file.List, func(was correct.Correction) bool {
		if math.Abs(was.Time-fix.Time) > same {
			return false
		}
		return was.Kind == fix.Kind && was.Counts == fix.Counts || slices.Contains(starts, was.Kind) && slices.Contains(starts, fix.Kind)
	})
}

// apply corrects a track. An error points to the line of the correction that
// does not fit it.
func (c *corrected) apply(t beat.Track) (beat.Track, error) {
	if c.file == nil {
		return t, nil
	}
	out, err := correct.Apply(t, c.file.List)
	var wrong *correct.Error
	if errors.As(err, &wrong) {
		return t, fmt.Errorf("%s:%d: %w", c.path, c.file.Lines[wrong.Index], wrong)
	}
	return out, err
}
