package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/cmd/internal/disk"
	"onphrase/samples/synth"
)

// heardAs is a song of so many phrases at 120 BPM as it is heard in a file that
// begins so much later, every count a little off.
func heardAs(phrases int, later, wobble float64) beat.Track {
	t := beat.Track{BPM: 120}
	for i := range phrases * beat.PhraseLen {
		at := later + 1 + float64(i)*0.5 + wobble*math.Sin(float64(i))
		if i%beat.PhraseLen == 0 {
			t.Phrases = append(t.Phrases, beat.Phrase{Time: at, Beat: i, Counts: beat.PhraseLen})
		}
		t.Beats = append(t.Beats, at)
	}
	return t
}

// lost is a song in whose file the first phrase was not heard.
func lost(t beat.Track) beat.Track {
	t.Phrases = t.Phrases[1:]
	return t
}

// Another file of a song is known by where its counts and phrases fall,
// whatever was cut from its beginning or end; other music is not.
func TestCompare(t *testing.T) {
	song := heardAs(10, 0, 0)
	tag := heardAs(10, 0, 0)
	for i := range tag.Phrases[3:] { // a bridge of 16 counts before the fourth
		tag.Phrases[3+i].Time += 8
	}
	other := heardAs(10, 0, 0)
	for i := range other.Beats {
		other.Beats[i] *= 0.97
	}
	for i := range other.Phrases {
		other.Phrases[i].Time *= 0.97
	}
	for name, c := range map[string]struct {
		is    beat.Track
		alike bool
		fits  bool
		later float64
	}{
		"the same":          {song, true, true, 0},
		"heard differently": {heardAs(10, 0.004, 0.006), true, true, 0.004},
		"padded":            {heardAs(10, 0.05, 0), true, false, 0.05},
		"a count later":     {heardAs(10, 0.5, 0.004), true, false, 0.5},
		"silence in front":  {heardAs(10, 3.2, 0.004), true, false, 3.2},
		"trimmed":           {heardAs(10, -0.7, 0), true, false, -0.7},
		"fades earlier":     {heardAs(9, 0, 0), true, true, 0},
		"other tempo":       {other, false, false, 0},
		"other phrases":     {tag, false, false, 0},
		"first phrase lost": {lost(heardAs(10, -0.7, 0)), true, false, -0.7},
		"half of it":        {heardAs(5, 0, 0), false, false, 0},
		"nothing heard":     {beat.Track{}, false, false, 0},
	} {
		got := compare(song, c.is)
		if got.alike != c.alike || got.fits() != c.fits || math.Abs(got.later-c.later) > 0.005 {
			t.Errorf("%s: %+v, want %+v", name, got, c)
		}
	}
}

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
