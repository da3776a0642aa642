package library

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

// CorrectionEnding ends the name of the file, beside a track, in which a person
// corrects what was heard in it.
const CorrectionEnding = ".onphrase.yaml"

// CorrectionLimit is the largest such file read [bytes].
const CorrectionLimit = 1 << 20

// Corrections is what a person has corrected of a track, and where that is kept.
type Corrections struct {
	Path  string        // of the file, or where it will be; empty when there is no place
	File  *correct.File // nil when nothing was ever corrected
	Notes []string      // what she should know about it
}

// CorrectionsOf finds the corrections of a track: in the file beside it, else
// in the user's own folder. A file that cannot be understood, or that belongs
// to another sound, is an error: music whose corrections were left out without
// a word would send a class astray.
func CorrectionsOf(track string) (Corrections, error) {
	beside := track + CorrectionEnding
	own := ownCorrections(track)
	src, err := disk.ReadLimited(beside, CorrectionLimit)
	switch {
	case err == nil:
		c := Corrections{Path: beside}
		if c.File, err = readCorrections(beside, src, track); err != nil {
			return c, err
		}
		if _, err := os.Stat(own); own != "" && err == nil {
			c.Notes = append(c.Notes, fmt.Sprintf("corrected in %s; what %s says is left out", beside, own))
		}
		return c, nil
	case !errors.Is(err, fs.ErrNotExist):
		return Corrections{Path: beside}, fmt.Errorf("%s: %s", beside, told.Reason(err))
	case own == "":
		return Corrections{Path: beside}, nil
	}
	src, err = disk.ReadLimited(own, CorrectionLimit)
	if errors.Is(err, fs.ErrNotExist) {
		return Corrections{Path: beside}, nil
	}
	c := Corrections{Path: own}
	if err != nil {
		return c, fmt.Errorf("%s: %s", own, told.Reason(err))
	}
	c.File, err = readCorrections(own, src, track)
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
		return nil, fmt.Errorf("%s was made for another recording, called %s; move it away, or put that recording back",
			path, file.Track)
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
	return filepath.Join(dir, strings.TrimPrefix(sound, "sha256:")+CorrectionEnding)
}

// correctionFolder is the user's own folder for corrections, empty where she
// has none.
func correctionFolder() string { return disk.OwnFile("", "corrections") }

// Save writes the corrections where they are kept; new ones beside the track
// or, where that cannot be written, into the user's own folder.
func (c *Corrections) Save() error {
	src, err := c.File.Bytes()
	if err != nil {
		return err
	}
	err = disk.WriteWhole(c.Path, src)
	if err == nil {
		return nil
	}
	dir := correctionFolder()
	if _, there := os.Stat(c.Path); there == nil || dir == "" {
		return told.Failed("", "cannot write %s: %s", c.Path, told.Reason(err))
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return told.Failed("", "cannot write %s: %s", dir, told.Reason(err))
	}
	c.Path = ownPath(dir, c.File.Sound)
	return disk.Wrote(c.Path, disk.WriteWhole(c.Path, src))
}

// Says tells whether she has said before what a correction says: the same, or
// that a phrase starts at that count.
func (c *Corrections) Says(fix correct.Correction) bool {
	const same = 0.0005 // [s] half of the step in which times are kept
	starts := []correct.Kind{correct.One, correct.Phrase}
	return slices.ContainsFunc(c.File.List, func(was correct.Correction) bool {
		if math.Abs(was.Time-fix.Time) > same {
			return false
		}
		return was.Kind == fix.Kind && was.Counts == fix.Counts ||
			slices.Contains(starts, was.Kind) && slices.Contains(starts, fix.Kind)
	})
}

// Apply corrects a track. An error points to the line of the correction that
// does not fit it.
func (c *Corrections) Apply(t beat.Track) (beat.Track, error) {
	if c.File == nil {
		return t, nil
	}
	out, err := correct.Apply(t, c.File.List)
	var wrong *correct.Error
	if errors.As(err, &wrong) {
		return t, fmt.Errorf("%s:%d: %w", c.Path, c.File.Lines[wrong.Index], wrong)
	}
	return out, err
}
