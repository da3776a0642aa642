package beat_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"onphrase/beat/score"
)

const soundfont = "/usr/share/sounds/sf2/TimGM6mb.sf2" // Debian package timgm6mb-soundfont

// midiSongs are of Debian's openttd-openmsx (GPL), played by fluidsynth; their
// tempo maps are the truth. They were chosen among songs that the analysis gets
// right: they guard what works and measure nothing.
var midiSongs = []string{"say_what_redfarn", "be_sharp_bw_redfarn", "harp_harmony", "chemistry_lab",
	"city_blues_redfarn"}

const (
	midiFolder = "/usr/share/games/openttd/baseset/openmsx/"
	leastRight = 4 // of midiSongs; an octave error is an error here
)

// The truth is the tempo map of each MIDI file, whose every quarter is a beat.
// aubio's tracker reads the same sound: it must not be the better one.
func TestBeatsOfMIDIFiles(t *testing.T) {
	need(t, "fluidsynth", "fluidsynth")
	need(t, "aubiotrack", "aubio-tools")
	right, ours, theirs := 0, 0.0, 0.0
	for _, name := range midiSongs {
		file := midiFolder + name + ".mid"
		wav := render(t, file)
		truth := quarters(t, file)
		track := analyze(t, open(t, wav))
		r, other := score.Beats(truth, track.Beats), score.Beats(truth, aubio(t, wav))
		e := medianError(truth, track.Beats)
		t.Logf("%s: F %.2f (aubio %.2f), AMLt %.2f (%.2f), median error %.1f ms, %.2f BPM, trust %.2f",
			name, r.F, other.F, r.AMLt, other.AMLt, 1000*e, track.BPM, track.Trust.Beat)
		ours, theirs = ours+r.F, theirs+other.F
		if r.F >= 0.95 && e <= 0.01 {
			right++
		}
	}
	if right < leastRight {
		t.Errorf("the beats of %d of %d songs are right, want %d", right, len(midiSongs), leastRight)
	}
	if ours < theirs {
		t.Errorf("aubio does better: mean F %.2f, ours %.2f", theirs/float64(len(midiSongs)), ours/float64(len(midiSongs)))
	}
}

func aubio(t *testing.T, wav string) []float64 {
	t.Helper()
	out, err := exec.Command("aubiotrack", "-i", wav).Output()
	if err != nil {
		t.Fatalf("aubiotrack: %v", err)
	}
	return numbers(t, string(out))
}

// render plays a MIDI file, or skips the test, loudly, where something is
// missing.
func render(t *testing.T, file string) string {
	t.Helper()
	for name, debianPackage := range map[string]string{file: "openttd-openmsx", soundfont: "timgm6mb-soundfont"} {
		if _, err := os.Stat(name); err != nil {
			t.Skipf("SKIPPED, NOTHING CHECKED: %v (Debian package %s)", err, debianPackage)
		}
	}
	wav := filepath.Join(t.TempDir(), "song.wav")
	cmd := exec.Command("fluidsynth", "-ni", "-q", "-r", "22050", "-R", "0", "-C", "0", "-F", wav, soundfont, file)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("fluidsynth: %v: %s", err, out)
	}
	return wav
}

// quarters lists the time of every quarter note up to the last note that
// begins, after the file's tempo map.
//
// Ref: the tempo map is read by mido (Debian package python3-mido).
func quarters(t *testing.T, file string) []float64 {
	t.Helper()
	const program = `
import mido, sys
song, tick, now, tempo, due, last, out = mido.MidiFile(sys.argv[1]), 0, 0.0, 500000, 0, 0.0, []
for m in mido.merge_tracks(song.tracks):
    end = tick + m.time
    while due <= end:
        out.append(now + mido.tick2second(due - tick, song.ticks_per_beat, tempo))
        due += song.ticks_per_beat
    now += mido.tick2second(m.time, song.ticks_per_beat, tempo)
    tick = end
    if m.type == 'set_tempo': tempo = m.tempo
    if m.type == 'note_on' and m.velocity > 0: last = now
print(*[x for x in out if x <= last])`
	const python = "/usr/bin/python3" // the one that Debian's modules belong to
	if err := exec.Command(python, "-c", "import mido").Run(); err != nil {
		t.Skip("SKIPPED, NOTHING CHECKED: no mido for python3 (Debian package python3-mido)")
	}
	out, err := exec.Command(python, "-c", program, file).Output()
	if err != nil {
		t.Fatalf("mido: %v", err)
	}
	return numbers(t, string(out))
}

func numbers(t *testing.T, text string) (x []float64) {
	t.Helper()
	for _, word := range strings.Fields(text) {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			t.Fatal(err)
		}
		x = append(x, v)
	}
	return x
}
