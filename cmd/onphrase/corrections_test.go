package main

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
	src, err := os.ReadFile(filepath.Join("..", "..", "samples", "demo", "music", "tidewater.mp3"))
	if err != nil {
		t.Fatal(err)
	}
	track := filepath.Join(t.TempDir(), "another name.mp3")
	if err := os.WriteFile(track, src, disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	if c, err := correctionsOf(track); err != nil || c.file != nil || c.path != track+correctionEnding {
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
	c := corrected{path: filepath.Join(track, "x"+correctionEnding), file: fresh(correct.Half)}
	if err := c.save(); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(c.path, correctionFolder()) {
		t.Fatalf("kept in %s", c.path)
	}
	found, err := correctionsOf(track)
	if err != nil || found.file == nil || found.path != c.path || found.file.List[0].Kind != correct.Half {
		t.Fatalf("%+v, %v", found, err)
	}
	beside := corrected{path: track + correctionEnding, file: fresh(correct.Double)}
	if err := beside.save(); err != nil {
		t.Fatal(err)
	}
	found, err = correctionsOf(track)
	if err != nil || found.path != beside.path || found.file.List[0].Kind != correct.Double || len(found.notes) != 1 {
		t.Fatalf("%+v, %v", found, err)
	}
}
