package align

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// placed writes rows as "kind track phrase/count +counts".
func placed(rows []Row) []string {
	var out []string
	for _, r := range rows {
		out = append(out, strings.TrimSpace(fmt.Sprintf("%s %s %d/%d +%d %s", r.Kind, r.Track, r.Phrase, r.Count, r.Counts,
			r.Side)))
	}
	return out
}

func TestLay(t *testing.T) {
	long := song{file: "a.mp3", bpm: 120, duration: 240}
	for _, c := range []struct {
		name  string
		head  string
		items []string
		songs []song
		want  []string
	}{
		{"starts on the first phrase that can be trusted", "", []string{squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 240, phrases: "32@0.2 32@0.4 32@0.5 32"}},
			[]string{"lead-in a.mp3 0/0 +64", "set a.mp3 3/1 +64"}},
		{"starts on the first phrase when none can", "", []string{squats},
			[]song{{file: "a.mp3", bpm: 120, one: 1, duration: 240, phrases: "32@0.2"}},
			[]string{"lead-in a.mp3 0/0 +0", "set a.mp3 1/1 +64"}},
		{"starts on a phrase", "start: phrase 2", []string{squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 240, pickup: 4, one: 2, phrases: "16 32"}},
			[]string{"lead-in a.mp3 0/0 +20", "set a.mp3 2/1 +64"}},
		{"starts on a count", "start: count 9", []string{squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 240, pickup: 4, one: 2}},
			[]string{"lead-in a.mp3 0/0 +12", "set a.mp3 1/9 +64"}},
		{"starts on the count nearest to a time", "start: 0:10.1", []string{`{interval: jog, time: 32 counts, on: count}`},
			[]song{long},
			[]string{"lead-in a.mp3 0/0 +20", "interval a.mp3 1/21 +32"}},
		{"a block waits for a phrase, a set for an eight", "", []string{`{pause: water, time: 12 counts}`,
			`{set: squat, reps: "1 x 4-4"}`, `{block: A, moves: [{move: march, counts: 32}]}`}, []song{long},
			[]string{"pause a.mp3 1/1 +12", "hold a.mp3 1/13 +4", "set a.mp3 1/17 +8", "hold a.mp3 1/25 +8",
				"block a.mp3 2/1 +32"}},
		{"a tag is waited for", "", []string{squats, squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 240, phrases: "32 32 4 32"}},
			[]string{"set a.mp3 1/1 +64", "hold a.mp3 3/1 +4", "set a.mp3 4/1 +64"}},
		{"what fits in a tag goes there", "", []string{squats, `{set: squat, reps: "1 x 2-2"}`, squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 240, phrases: "32 32 4 32"}},
			[]string{"set a.mp3 1/1 +64", "set a.mp3 3/1 +4", "set a.mp3 4/1 +64"}},
		{"eights start afresh after a tag", "", []string{`{interval: jog, time: 64 counts}`,
			`{pause: water, time: 12 counts}`, `{set: squat, reps: "1 x 4-4"}`},
			[]song{{file: "a.mp3", bpm: 120, duration: 240, phrases: "32 32 4 32"}},
			[]string{"interval a.mp3 1/1 +64", "hold a.mp3 3/1 +4", "pause a.mp3 4/1 +12", "hold a.mp3 4/13 +4",
				"set a.mp3 4/17 +8"}},
		{"after the clock the next waits", "", []string{`{interval: jog, time: 10.3s, on: clock}`, squats}, []song{long},
			[]string{"interval a.mp3 1/1 +21", "hold a.mp3 1/22 +3", "set a.mp3 1/25 +64"}},
		{"sides are done right, then left", "", []string{`{set: one-arm row, reps: "4 x 2-2, 8 x 1-1", sides: both}`},
			[]song{long},
			[]string{"set a.mp3 1/1 +16 right", "set a.mp3 1/17 +16 right", "set a.mp3 2/1 +16 left",
				"set a.mp3 2/17 +16 left"}},
		{"what does not fit goes to the next track", "tracks: [a.mp3, b.mp3]",
			[]string{`{interval: jog, time: 96 counts}`, squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 70}, {file: "b.mp3", bpm: 120, one: 2, duration: 90}},
			[]string{"interval a.mp3 1/1 +96", "change b.mp3 0/0 +0", "lead-in b.mp3 0/0 +0", "set b.mp3 1/1 +64"}},
		{"a track without room is passed over", "tracks: [a.mp3, b.mp3, c.mp3]",
			[]string{`{interval: jog, time: 96 counts}`, squats}, []song{{file: "a.mp3", bpm: 120, duration: 70},
				{file: "b.mp3", bpm: 120, duration: 20}, {file: "c.mp3", bpm: 120, duration: 40}},
			[]string{"interval a.mp3 1/1 +96", "change c.mp3 0/0 +0", "set c.mp3 1/1 +64"}},
		{"what fits nowhere goes where most of it fits", "tracks: [a.mp3, b.mp3, c.mp3]",
			[]string{`{interval: jog, time: 96 counts}`, squats}, []song{{file: "a.mp3", bpm: 120, duration: 60},
				{file: "b.mp3", bpm: 120, duration: 30}, {file: "c.mp3", bpm: 120, duration: 20}},
			[]string{"interval a.mp3 1/1 +96", "change b.mp3 0/0 +0", "set b.mp3 1/1 +64"}},
		{"a little less beyond the end is reason enough", "tracks: [a.mp3, b.mp3]",
			[]string{`{interval: jog, time: 96 counts}`, squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 60}, {file: "b.mp3", bpm: 120, duration: 14}},
			[]string{"interval a.mp3 1/1 +96", "change b.mp3 0/0 +0", "set b.mp3 1/1 +64"}},
		{"with no other track it goes on past the music", "", []string{`{interval: jog, time: 96 counts}`, squats},
			[]song{{file: "a.mp3", bpm: 120, duration: 70}},
			[]string{"interval a.mp3 1/1 +96", "set a.mp3 4/1 +64"}},
		{"a failed track is passed over", "tracks: [a.mp3, b.mp3]", []string{squats},
			[]song{{file: "a.mp3", problem: "no steady beat found"}, {file: "b.mp3", bpm: 120, duration: 90}},
			[]string{"set b.mp3 1/1 +64"}},
		{"without music nothing has a place", "", []string{squats, `{pause: water, time: 30s}`},
			[]song{{file: "a.mp3", problem: "no steady beat found"}},
			[]string{"set  0/0 +64", "pause  0/0 +0"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Build(onePart(t, c.head, c.items...), songs(c.songs...))
			if diff := cmp.Diff(c.want, placed(m.Rows)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Nothing can be said before the class begins.
func TestNoCueBeforeClass(t *testing.T) {
	m := Build(onePart(t, "", squats), songs(song{file: "a.mp3", bpm: 120, one: 0.7, duration: 100}))
	if r := m.Rows[1]; r.CueTime != 0 || r.ClassTime != 0.7 {
		t.Errorf("cue %v for %v", r.CueTime, r.ClassTime)
	}
}

// Ways out name the smallest change that is enough.
func TestSmallestFix(t *testing.T) {
	c := onePart(t, "", `{set: squat, reps: "8 x 4-4"}`, `{set: wide squat, reps: "4 x 4-4"}`,
		`{set: lunge, reps: "16 x 4-4"}`)
	c.Slot = 80 // the class lasts 112 counts x 2 = 112 s at 120
	f := found(t, Build(c, songs(song{file: "a.mp3", bpm: 120, duration: 240})), "over-slot")
	if want := "take out or shorten squat of One (0:32)"; f.Fix != want {
		t.Errorf("%s; %s, want %s", f.Message, f.Fix, want)
	}
	m := Build(onePart(t, "start: phrase 4", `{interval: jog, time: 320 counts}`),
		songs(song{file: "a.mp3", bpm: 120, duration: 180}))
	if f := found(t, m, "music-ends-first"); !strings.HasPrefix(f.Fix, "start: phrase 2;") {
		t.Errorf("%s; %s", f.Message, f.Fix)
	}
}

// The lead-in is time to set up in: the first item begins where the start says.
// Where the lead-in is too short, what is missing of the setup comes after it.
func TestSetupInLeadIn(t *testing.T) {
	for _, c := range []struct {
		name, head, setup string
		phrase, count     int
	}{
		{"start and counts", "start: phrase 2", "16 counts", 2, 1},
		{"start and seconds", "start: phrase 2", "10s", 2, 1},
		{"no start, lead-in of 5 s", "", "8 counts", 1, 1},
		{"lead-in too short", "", "12s", 1, 17},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Build(onePart(t, c.head, `{set: squat, reps: "8 x 2-2", setup: `+c.setup+`}`),
				songs(song{file: "a.mp3", bpm: 128, one: 5, duration: 240}))
			r := m.Rows[len(m.Rows)-1]
			if r.Phrase != c.phrase || r.Count != c.count {
				t.Errorf("begins on phrase %d, count %d", r.Phrase, r.Count)
			}
		})
	}
}
