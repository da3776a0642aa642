package phrase_test

import (
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"onphrase/beat/bar"
	"onphrase/beat/score"
)

// TestBarLinesOfMIDIFiles plays songs of Debian packages (openttd-openmsx,
// simutrans-data) with fluidsynth. Their tempo and time signature say where
// the counts and the bar lines are. These songs guard against regressions: on
// one song of such packages in eight, bar lines and sound disagree for us.
//
// Ref: MIDI Manufacturers Association 1996, "Standard MIDI Files 1.0".
func TestBarLinesOfMIDIFiles(t *testing.T) {
	const font = "/usr/share/sounds/sf2/TimGM6mb.sf2"
	if _, err := exec.LookPath("fluidsynth"); err != nil {
		t.Skip("SKIPPED: needs fluidsynth, timgm6mb-soundfont, openttd-openmsx and simutrans-data")
	}
	for _, c := range []struct {
		song  string
		meter int
	}{
		{"openttd/baseset/openmsx/harp_harmony.mid", 4},
		{"openttd/baseset/openmsx/chuggachugga.mid", 4},
		{"openttd/baseset/openmsx/tttheme2.mid", 4},
		{"openttd/baseset/openmsx/boogi_marabi_redfarn.mid", 3},
		{"simutrans/music/34-flyingaway.mid", 4},
		{"simutrans/music/45-Misty-Forest.mid", 4},
	} {
		t.Run(filepath.Base(c.song), func(t *testing.T) {
			path := filepath.Join("/usr/share/games", c.song)
			data, err := os.ReadFile(path)
			if err != nil {
				t.Skipf("SKIPPED: install openttd-openmsx and simutrans-data: %v", err)
			}
			truth := readSMF(data)
			if truth.meter != c.meter {
				t.Fatalf("the file has %d counts in a bar, want %d", truth.meter, c.meter)
			}
			wav := filepath.Join(t.TempDir(), "song.wav")
			if out, err := exec.Command("fluidsynth", "-ni", "-q", "-g", "0.4", "-r", "22050", "-F", wav, font,
				path).CombinedOutput(); err != nil {
				t.Fatalf("fluidsynth: %v\n%s", err, out)
			}
			sound, err := hear(wav, truth.beats)
			if err != nil {
				t.Fatal(err)
			}
			bars := bar.Find(sound)
			if bars.Meter != c.meter {
				t.Errorf("meter %d, want %d", bars.Meter, c.meter)
			}
			ones := onesOf(truth.beats, bars.BeatInBar)
			if f := score.Count1(truth.ones, ones); f < 0.9 {
				t.Errorf("count 1: F %.2f, trust %.2f", f, bars.Trust)
			}
		})
	}
}

// smfTruth is where the counts of a MIDI file fall, from its first note on to
// its last [s].
type smfTruth struct {
	meter       int
	beats, ones []float64
}

// change is a tempo that holds from a tick on.
type change struct {
	tick    int
	quarter float64 // length of a quarter note [s]
}

func readSMF(data []byte) smfTruth {
	division := int(binary.BigEndian.Uint16(data[12:]))
	truth := smfTruth{meter: 4}
	tempi := []change{{0, 0.5}}
	first, last := 1<<30, 0
	for at := 14; at+8 <= len(data); {
		size := int(binary.BigEndian.Uint32(data[at+4:]))
		readTrack(data[at+8:at+8+size], func(tick int, status byte, body []byte) {
			switch {
			case status&0xf0 == 0x90 && body[1] > 0:
				first, last = min(first, tick), max(last, tick)
			case status == 0x51:
				us := int(body[0])<<16 | int(body[1])<<8 | int(body[2])
				tempi = append(tempi, change{tick, float64(us) / 1e6})
			case status == 0x58:
				truth.meter = int(body[0])
			}
		})
		at += 8 + size
	}
	slices.SortStableFunc(tempi, func(a, b change) int { return a.tick - b.tick })
	for beat := 0; beat*division <= last; beat++ {
		tick := beat * division
		if tick < first-division/16 {
			continue
		}
		time := secondsAt(tempi, tick, division)
		truth.beats = append(truth.beats, time)
		if beat%truth.meter == 0 {
			truth.ones = append(truth.ones, time)
		}
	}
	return truth
}

func secondsAt(tempi []change, tick, division int) float64 {
	seconds := 0.0
	for i, c := range tempi {
		end := tick
		if i+1 < len(tempi) {
			end = min(tick, tempi[i+1].tick)
		}
		if end > c.tick {
			seconds += float64(end-c.tick) / float64(division) * c.quarter
		}
	}
	return seconds
}

// readTrack calls event for each channel message, by its status byte, and for
// each meta event, by its type.
func readTrack(data []byte, event func(tick int, status byte, body []byte)) {
	varint := func() (n int) {
		for {
			b := data[0]
			data = data[1:]
			n = n<<7 | int(b&0x7f)
			if b < 0x80 {
				return n
			}
		}
	}
	tick, running := 0, byte(0)
	for len(data) > 0 {
		tick += varint()
		status := data[0]
		switch {
		case status == 0xff:
			kind := data[1]
			data = data[2:]
			n := varint()
			event(tick, kind, data[:n])
			data = data[n:]
			continue
		case status == 0xf0 || status == 0xf7:
			data = data[1:]
			n := varint()
			data = data[n:]
			continue
		case status >= 0x80:
			running = status
			data = data[1:]
		}
		n := 2
		if running&0xf0 == 0xc0 || running&0xf0 == 0xd0 {
			n = 1
		}
		event(tick, running, data[:n])
		data = data[n:]
	}
}
