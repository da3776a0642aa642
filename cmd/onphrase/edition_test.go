package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/cmd/internal/disk"
	"onphrase/samples/synth"
)

// The substitute's own file of a song, of another sample rate, is listened to
// and found to be the same music.
func TestUnpackOtherFile(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	music := clickFile(t)
	songFile(t, music, 128, rate) // bare clicks have no phrases to tell one edition by
	dir := filepath.Dir(music)
	class := filepath.Join(dir, "class.yaml")
	if err := os.WriteFile(class, []byte(noisyClass), disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	file, home := filepath.Join(dir, "p.zip"), filepath.Join(dir, "sub")
	if code, _, talk := command(t, "pack", class, "-o", file); code != exitClean {
		t.Fatalf("exit code %d, %s", code, talk)
	}
	for _, c := range []struct {
		bpm  float64 // of the file put there, 0 for none
		code exitCode
		want string
	}{
		{0, exitFindings, "missing"},
		{128, exitClean, "there another file: its counts and phrases"},
		{131, exitFindings, "other music"},
	} {
		if c.bpm > 0 {
			songFile(t, filepath.Join(home, "clicks.wav"), c.bpm, 2*rate)
		}
		code, out, talk := command(t, "unpack", file, home)
		flat := strings.Join(strings.Fields(out), " ")
		if code != c.code || !strings.Contains(flat, c.want) {
			t.Errorf("%g BPM: exit code %d\n%s%s", c.bpm, code, out, talk)
		}
	}
}

// songFile writes a minute of music at a tempo.
func songFile(t *testing.T, path string, bpm float64, rate int) {
	t.Helper()
	song := synth.Song{Title: "Song", BPM: bpm, Style: synth.BackBeat, Seed: 5, Rate: rate}
	for _, part := range []synth.Part{synth.Verse, synth.Drop, synth.Verse, synth.Drop} {
		song.Sections = append(song.Sections, synth.Section{Part: part, Counts: 32})
	}
	var b bytes.Buffer
	if err := synth.Render(song).WriteWAV(&b, 1); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), disk.FilePerm); err != nil {
		t.Fatal(err)
	}
}
