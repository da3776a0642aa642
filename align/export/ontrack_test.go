package export

import (
	"sort"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
)

// On a track's own timeline everything is where the count map's track times
// say, as recorded, whatever the tempo it is played at and wherever the track
// comes in the class.
func TestOnTrack(t *testing.T) {
	m := demoMap(t)
	got, err := OnTrack(m, "Slow Ferry")
	if err != nil {
		t.Fatal(err)
	}
	if got.Class != "Slow Ferry" || got.Length != 130 || len(got.Parts) != 1 {
		t.Fatalf("%+v", got)
	}
	n := 0
	for _, r := range m.Rows {
		if r.Track != "slow-ferry.mp3" {
			continue
		}
		on := got.Rows[n]
		n++
		if on.ClassTime != r.TrackTime || on.Row != n || on.Item != r.Item {
			t.Errorf("row %d: %+v", n, on)
		}
		// Recorded at 124, taught at 126 counts a minute.
		if r.Counts > 0 && abs(on.Seconds-float64(r.Counts)*60/124) > 0.003 && r.Kind != align.LeadIn {
			t.Errorf("row %d lasts %.3f s, want %d counts at 124 BPM", n, on.Seconds, r.Counts)
		}
		if early := float64(r.CueCounts) * 60 / 124; r.CueCounts > 0 && abs(on.ClassTime-on.CueTime-early) > 0.003 {
			t.Errorf("row %d: announced %.3f s early, want %.3f", n, on.ClassTime-on.CueTime, early)
		}
	}
	if n != len(got.Rows) {
		t.Errorf("%d rows of %d", len(got.Rows), n)
	}
	last := got.Rows[n-1]
	if end := got.Parts[0].ClassTime + got.Parts[0].Seconds; abs(end-last.ClassTime-last.Seconds) > rounding {
		t.Errorf("the part ends at %.3f", end)
	}
}

func TestOnTrackNames(t *testing.T) {
	m := demoMap(t)
	for name, want := range map[string]string{
		"tidewater.mp3": "Tidewater", "music/tidewater.mp3": "Tidewater", "TIDEWATER": "Tidewater",
		"slow-ferry": "Slow Ferry", "slow ferry": "Slow Ferry", "港の灯.mp3": "港の灯 (Harbour Lights)",
	} {
		if got, err := OnTrack(m, name); err != nil || got.Class != want {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
	for name, want := range map[string]string{
		"fast ferry": "there are tidewater.mp3, slow-ferry.mp3, 港の灯.mp3",
		"gone.mp3":   "nothing of this class is on a track", // it could not be analysed
	} {
		if _, err := OnTrack(m, name); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := OnTrack(&align.CountMap{}, "x"); err == nil {
		t.Error("a track of an empty class")
	}
}

const twice = `onphrase: 1
class: Twice
parts:
  - part: Round 1
    tracks: [slow-ferry.mp3]
    do:
      - {set: squat, reps: "8 x 2-2"}
      - {interval: march, time: 20s}
  - part: Round 2
    tracks: [slow-ferry.mp3]
    start: phrase 2
    do:
      - {set: deadlift, reps: "8 x 2-2"}
`

// A song on which two parts are taught shows both, each with its part, and so
// do the calls.
func TestTrackTwice(t *testing.T) {
	c, problems := plan.Parse("class.yaml", []byte(twice))
	for _, p := range problems {
		t.Fatal(p.In("class.yaml"))
	}
	m := align.Build(c, map[string]beat.Track{"slow-ferry.mp3": steady("slow-ferry.mp3", "Slow Ferry", 120, 4, 130)})
	got, err := OnTrack(m, "slow-ferry")
	if err != nil {
		t.Fatal(err)
	}
	lrc := written(t, "lrc", got)
	for _, want := range []string{"[00:04.00]Round 1: squat, 8 x 2-2\n", "[00:16.00]next: Round 2: deadlift, 8 x 2-2\n",
		"[00:20.00]Round 2: deadlift, 8 x 2-2\n", "]Round 1: “10 s”\n"} {
		if !strings.Contains(lrc, want) {
			t.Errorf("no %q in\n%s", want, lrc)
		}
	}
	if strings.Contains(lrc, "]“") {
		t.Errorf("a call without its part in\n%s", lrc)
	}
}

// ffmpeg reads the LRC file as the same lines at the same times, which the
// format gives to 1/100 s.
func TestLRCInFFmpeg(t *testing.T) {
	ffmpeg := needs(t, "ffmpeg", "ffmpeg")
	for name, m := range map[string]*align.CountMap{"demo": demoMap(t), "hostile": arrows(t)} {
		t.Run(name, func(t *testing.T) {
			want := notes(acts(m))
			sort.SliceStable(want, func(i, j int) bool { return want[i].from < want[j].from })
			got := readCues(t, runs(t, ffmpeg, "-nostdin", "-v", "error", "-i", inFile(t, "lrc", m), "-f", "webvtt", "-"))
			if len(got) != len(want) {
				t.Fatalf("%d lines read of %d written", len(got), len(want))
			}
			for i, w := range want {
				if late := got[i].From - w.from; late > rounding || late < -0.0101 || got[i].Text != lrcText.Replace(w.text) {
					t.Errorf("read %+v, written %+v", got[i], w)
				}
			}
		})
	}
}
