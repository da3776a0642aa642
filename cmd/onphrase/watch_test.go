package main

import (
	"os"
	"path/filepath"
	"testing"

	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/plan"
)

// A correction kept beside the song or in the user's own folder is a change
// of the class.
func TestStateSeesCorrections(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	if dir, err := os.UserConfigDir(); err != nil || dir != os.Getenv("XDG_CONFIG_HOME") {
		t.Skip("this system's configuration folder cannot be set")
	}
	music := filepath.Join(t.TempDir(), "one.mp3")
	l := &aligned.Class{
		Path:  filepath.Join(t.TempDir(), "class.yaml"),
		Class: &plan.Class{Parts: []plan.Part{{Tracks: []plan.TrackRef{{File: "one.mp3"}}}}},
		Files: aligned.Files{"one.mp3": music},
	}
	c := &classFlags{}
	own := disk.OwnFile("", "corrections")
	if err := os.MkdirAll(own, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{music + library.CorrectionEnding, filepath.Join(own, "1234"+library.CorrectionEnding)} {
		before := c.state(l)
		if again := c.state(l); again != before {
			t.Errorf("nothing changed, but %q became %q", before, again)
		}
		if err := os.WriteFile(path, []byte("onphrase: 1\n"), disk.FilePerm); err != nil {
			t.Fatal(err)
		}
		if c.state(l) == before {
			t.Errorf("%s was not seen", path)
		}
	}
}
