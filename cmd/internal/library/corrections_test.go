package library

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/beat/correct"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/disk"
)

// Where nothing can be written beside a track, its corrections go into the
// user's own folder, and are found there by the sound, under any name. Those
// beside the track come first, and that is said.
func TestCorrectionsInOwnFolder(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	if dir, err := os.UserConfigDir(); err != nil || dir != os.Getenv("XDG_CONFIG_HOME") {
		t.Skip("this system's configuration folder cannot be set")
	}
	src, err := os.ReadFile(filepath.Join("..", "..", "..", "samples", "demo", "music", "tidewater.mp3"))
	if err != nil {
		t.Fatal(err)
	}
	track := filepath.Join(t.TempDir(), "another name.mp3")
	if err := os.WriteFile(track, src, disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	if c, err := CorrectionsOf(track); err != nil || c.File != nil || c.Path != track+CorrectionEnding {
		t.Fatalf("nothing corrected yet: %+v, %v", c, err)
	}
	sound, err := decode.Identity(track)
	if err != nil {
		t.Fatal(err)
	}
	fresh := func(kind correct.Kind) *correct.File {
		f := correct.NewFile("tidewater.mp3", sound)
		f.Add(correct.Correction{Kind: kind})
		return f
	}
	// A file is no folder: nothing can be written below it, by nobody.
	c := Corrections{Path: filepath.Join(track, "x"+CorrectionEnding), File: fresh(correct.Half)}
	if err := c.Save(); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(c.Path, correctionFolder()) {
		t.Fatalf("kept in %s", c.Path)
	}
	found, err := CorrectionsOf(track)
	if err != nil || found.File == nil || found.Path != c.Path || found.File.List[0].Kind != correct.Half {
		t.Fatalf("%+v, %v", found, err)
	}
	beside := Corrections{Path: track + CorrectionEnding, File: fresh(correct.Double)}
	if err := beside.Save(); err != nil {
		t.Fatal(err)
	}
	found, err = CorrectionsOf(track)
	if err != nil || found.Path != beside.Path || found.File.List[0].Kind != correct.Double || len(found.Notes) != 1 {
		t.Fatalf("%+v, %v", found, err)
	}
}
