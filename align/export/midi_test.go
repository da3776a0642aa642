package export

import (
	"encoding/json"
	"math"
	"os/exec"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/say"
)

// mido is how another library reads a MIDI file: the time of every marker and
// cue point, and of every bar line.
const mido = `
import json, mido, sys
file = mido.MidiFile(sys.argv[1], charset="utf-8")
at, tick, named, bars, tempi = 0.0, 0, [], [], 0
bar, counts, tempo = 0, 4, 500000
for e in mido.merge_tracks(file.tracks):
    step = tempo / 1e6 / file.ticks_per_beat  # seconds a tick
    while bar < tick + e.time:
        bars.append(at + (bar - tick) * step)
        bar += counts * file.ticks_per_beat
    at += e.time * step
    tick += e.time
    if e.type == "time_signature":
        counts, bar = e.numerator * 4 // e.denominator, tick
    if e.type == "set_tempo":
        tempo = e.tempo
        tempi += 1
    if e.type in ("marker", "cue_marker"):
        named.append({"at": at, "type": e.type, "text": e.text})
print(json.dumps({"type": file.type, "named": named, "bars": bars, "tempi": tempi, "seconds": at}))
`

type midiRead struct {
	Type  int `json:"type"`
	Named []struct {
		At   float64 `json:"at"`
		Type string  `json:"type"`
		Text string  `json:"text"`
	} `json:"named"`
	Bars    []float64 `json:"bars"`
	Tempi   int       `json:"tempi"`
	Seconds float64   `json:"seconds"`
}

// python finds an interpreter that has mido: Debian's own, whatever else is on
// the PATH.
func python(t *testing.T) string {
	t.Helper()
	for _, p := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(p, "-c", "import mido").Run() == nil {
			return p
		}
	}
	t.Skip("NOT CHECKED: no python3 with mido; apt install python3-mido")
	return ""
}

func readMIDI(t *testing.T, m *align.CountMap) midiRead {
	t.Helper()
	var got midiRead
	if err := json.Unmarshal([]byte(runs(t, python(t), "-c", mido, inFile(t, "midi", m))), &got); err != nil {
		t.Fatal(err)
	}
	return got
}

// drifting is a track that slows down and speeds up like people who play
// without a click, with counts rounded to the millisecond.
func drifting(file string) beat.Track {
	t := steady(file, "Old Pier", 120, 0.75, 180)
	at := 0.75
	for i := range t.Beats {
		t.Beats[i] = math.Round(at*1000) / 1000
		at += 60 / (120 + 6*math.Sin(float64(i)/25))
	}
	t.Duration = at
	for i := range t.Phrases {
		t.Phrases[i].Time = t.Beats[t.Phrases[i].Beat]
	}
	return t
}

const drift = `onphrase: 1
class: Old Pier
parts:
  - part: Round 1
    tracks: [old-pier.mp3]
    bpm: 126
    do:
      - {set: squat, reps: "16 x 2-2"}
      - {set: squat, reps: "16 x 4-4"}
`

func driftMap(t *testing.T) *align.CountMap {
	t.Helper()
	c, problems := plan.Parse("class.yaml", []byte(drift))
	for _, p := range problems {
		t.Fatal(p.In("class.yaml"))
	}
	return align.Build(c, map[string]beat.Track{"old-pier.mp3": drifting("old-pier.mp3")})
}

// Another library finds every row and every phrase where the count map has
// them, to 3 ms (the slack of 2 ms and the rounding of ticks), and count 1 of
// every phrase on a bar line.
func TestMIDIInMido(t *testing.T) {
	onTrack, err := OnTrack(demoMap(t), "slow-ferry")
	if err != nil {
		t.Fatal(err)
	}
	for name, m := range map[string]*align.CountMap{"demo": demoMap(t), "drifting": driftMap(t), "hostile": arrows(t),
		"one track": onTrack} {
		t.Run(name, func(t *testing.T) {
			got := readMIDI(t, m)
			if got.Type != 0 {
				t.Errorf("format %d", got.Type)
			}
			if abs(got.Seconds-m.Length) > 0.003 {
				t.Errorf("%.4f s long, the class %.4f", got.Seconds, m.Length)
			}
			near := func(text, kind string, at float64) {
				t.Helper()
				for _, n := range got.Named {
					if n.Type == kind && strings.HasSuffix(n.Text, text) && abs(n.At-at) <= 0.003 {
						return
					}
				}
				t.Errorf("no %s %q at %.3f", kind, text, at)
			}
			for _, a := range acts(m) {
				near(say.OneLine(a.what), "marker", a.from)
				if a.words != "" {
					near(say.OneLine(a.words), "cue_marker", a.cue)
				}
			}
			for _, u := range uses(m) {
				for n, p := range u.Taught.Phrases {
					at := u.classTime(u.Taught.Counts[p.First])
					if at > u.ends-rounding {
						continue
					}
					near(phraseWords(n+1, p), "marker", at)
					if !onBar(got.Bars, at) {
						t.Errorf("phrase %d at %.3f is on no bar line", n+1, at)
					}
				}
			}
		})
	}
}

func onBar(bars []float64, at float64) bool {
	for _, b := range bars {
		if abs(b-at) <= 0.003 {
			return true
		}
	}
	return false
}

// A steady track has one tempo, and the stretches of another keep every count
// within the slack of its place.
func TestTempoMap(t *testing.T) {
	for name, m := range map[string]*align.CountMap{"demo": demoMap(t), "drifting": driftMap(t)} {
		tm := newTempoMap(m)
		stretches := tm.stretches()
		at, worst := 0.0, 0.0
		for i, s := range stretches {
			next := tm.last()
			if i+1 < len(stretches) {
				next = stretches[i+1].first
			}
			for c := s.first; c < next; c++ {
				worst = max(worst, abs(at-tm.at[c]))
				at += float64(s.micros) / 1e6
			}
		}
		if worst > slack+1e-6 {
			t.Errorf("%s: a count is %.4f s from its place", name, worst)
		}
		t.Logf("%s: %d counts, %d tempi, at most %.2f ms off", name, len(tm.at), len(stretches), worst*1000)
		if name == "demo" && len(stretches) > 5 {
			t.Errorf("%d tempi for three steady tracks and two lead-ins", len(stretches))
		}
	}
}

// A song in three has bars of three counts, those after it and before it four.
func TestMIDIMeter(t *testing.T) {
	const class = `onphrase: 1
class: Locks
parts:
  - part: Cool-down
    tracks: [waltz.mp3]
    do:
      - {interval: march, time: 20s}
  - part: Stretch
    tracks: [plain.mp3]
    do:
      - {interval: march, time: 20s}
`
	c, problems := plan.Parse("class.yaml", []byte(class))
	for _, p := range problems {
		t.Fatal(p.In("class.yaml"))
	}
	waltz, plain := steady("waltz.mp3", "Lock Gates", 96, 2.5, 60), steady("plain.mp3", "Plain", 120, 0, 60)
	waltz.Meter = 3
	m := align.Build(c, map[string]beat.Track{"waltz.mp3": waltz, "plain.mp3": plain})
	got := readMIDI(t, m)
	for _, u := range uses(m) {
		meter, song := 3, waltz
		if u.File == "plain.mp3" {
			meter, song = 4, plain
		}
		for n, at := range song.Beats[:12] {
			if want := n%meter == 0; onBar(got.Bars, u.classTime(at)) != want {
				t.Errorf("%s: count %d on a bar line is %v", u.File, n, !want)
			}
		}
	}
}

// Numbers of any length are written as the standard's examples say.
//
// Ref: MMA, Standard MIDI Files 1.0, table of variable-length quantities.
func TestVariable(t *testing.T) {
	for n, want := range map[int]string{
		0: "\x00", 0x40: "\x40", 0x7F: "\x7F", 0x80: "\x81\x00", 0x2000: "\xC0\x00", 0x3FFF: "\xFF\x7F",
		0x4000: "\x81\x80\x00", 0x1FFFFF: "\xFF\xFF\x7F", 0x200000: "\x81\x80\x80\x00", 0xFFFFFFF: "\xFF\xFF\xFF\x7F",
	} {
		if got := string(variable(nil, n)); got != want {
			t.Errorf("%#x: % x, want % x", n, got, want)
		}
	}
}
