package align

import (
	"math"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
)

// The check values E1 to E20: arithmetic that was worked out by hand from the
// definitions (a count lasts 60/BPM s, an eight 8 counts, a phrase 32), with
// a published source where one is named beside the case.

// near reports whether two figures agree to the last of their decimals.
func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s = %.4f, want %.4f", what, got, want)
	}
}

const thousandth = 0.00101 // results are rounded to the millisecond, and so are the values

func TestSecondsOfCounts(t *testing.T) {
	for _, c := range []struct {
		name    string
		bpm     float64
		item    string
		counts  []int
		seconds float64 // of all rows
	}{
		{"E1 an eight at 128", 128, `{set: squat, reps: "2 x 2-2"}`, []int{8}, 3.750},
		{"E1 a phrase at 128", 128, `{set: squat, reps: "8 x 2-2"}`, []int{32}, 15.000},
		{"E1 two phrases at 128", 128, `{set: squat, reps: "8 x 4-4"}`, []int{64}, 30.000},
		{"E1 a phrase at 120", 120, `{set: squat, reps: "8 x 2-2"}`, []int{32}, 16.000},
		{"E1 a phrase at 130", 130, `{set: squat, reps: "8 x 2-2"}`, []int{32}, 14.769},
		{"E1 a phrase at 140", 140, `{set: squat, reps: "8 x 2-2"}`, []int{32}, 13.714},
		{"E2 24 reps in two phrases", 128, `{set: squat, reps: "8 x 2-2, 16 x 1-1"}`, []int{32, 32}, 30.000},
		{"E4 8 x 4-4 at 124", 124, `{set: squat, reps: "8 x 4-4"}`, []int{64}, 30.968},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Build(onePart(t, "", c.item), songs(song{file: "a.mp3", bpm: c.bpm, duration: 240}))
			total := 0.0
			for i, r := range work(m) {
				if r.Counts != c.counts[i] {
					t.Errorf("row %d: %d counts, want %d", i, r.Counts, c.counts[i])
				}
				total += r.Seconds
			}
			near(t, "seconds", total, c.seconds, thousandth)
		})
	}
}

// E3: 24 singles are 48 counts, one and a half phrases; 16 fill them. E2 says
// how the same 24 repetitions fill two.
func TestSpareCountsOfSingles(t *testing.T) {
	m := Build(onePart(t, "", `{set: squat, reps: "24 x 1-1"}`, `{set: squat, reps: "8 x 2-2"}`),
		songs(song{file: "a.mp3", bpm: 128, duration: 240}))
	f := found(t, m, "spare-counts")
	near(t, "spare counts", f.Figures["spare_counts"], 16, 0)
	near(t, "spare seconds", f.Figures["spare_seconds"], 7.5, thousandth)
	if want := "8 x 2-2, 16 x 1-1 (the same 24 reps); or 16 x 1-1, ending with the phrase before"; f.Fix != want {
		t.Errorf("fix: %s\nwant: %s", f.Fix, want)
	}
}

// E8, E9, E11 and the two halves of E10: seconds rounded to the nearest eight,
// on a tie to the end of a phrase.
func TestTimedWork(t *testing.T) {
	for _, c := range []struct {
		name    string
		bpm     float64
		time    string
		counts  int
		seconds float64
	}{
		{"E8 30 s at 130 (65.0 counts)", 130, "30s", 64, 29.538},
		{"E9 45 s at 132 (99)", 132, "45s", 96, 43.636},
		{"E10 20 s at 128 (42.67)", 128, "20s", 40, 18.750},
		{"E10 10 s at 128 (21.33)", 128, "10s", 24, 11.250},
		{"E11 30 s at 120, a tie of 56 and 64", 120, "30s", 64, 32.000},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Build(onePart(t, "", "{interval: jog, time: "+c.time+"}"),
				songs(song{file: "a.mp3", bpm: c.bpm, duration: 240}))
			r := work(m)[0]
			if r.Counts != c.counts {
				t.Errorf("%d counts, want %d", r.Counts, c.counts)
			}
			near(t, "seconds", r.Seconds, c.seconds, thousandth)
		})
	}
}

// E10: eight times 20 s of work and 10 s of pause, the protocol of
// PMC7311977, on 128 BPM: every cycle is 64 counts, all of it 16 phrases.
func TestEightCycles(t *testing.T) {
	var items []string
	for range 8 {
		items = append(items, "{interval: jog, time: 20s}", "{pause: rest, time: 10s}")
	}
	m := Build(onePart(t, "", items...), songs(song{file: "a.mp3", bpm: 128, duration: 300}))
	rows := work(m)
	last := rows[len(rows)-1]
	near(t, "end", last.ClassTime+last.Seconds, 240, thousandth)
	counts := 0
	for i, r := range rows {
		counts += r.Counts
		if i%2 == 0 && (r.Count != 1 || r.Phrase != i+1) {
			t.Errorf("cycle %d starts on phrase %d, count %d", i/2+1, r.Phrase, r.Count)
		}
	}
	if counts != 512 {
		t.Errorf("%d counts, want 512", counts)
	}
}

// E12, E13: whole phrases that a track holds, and what is left over.
func TestPhrasesOfTrack(t *testing.T) {
	for _, c := range []struct {
		name   string
		s      song
		ends   float64 // of the 12th phrase [s]
		counts int     // the last of them cut off, but more than half there
		tail   float64 // counts left of the music then
	}{
		{"E12", song{file: "a.mp3", bpm: 128, duration: 192}, 180.000, 410, 25.6},
		{"E13", song{file: "a.mp3", bpm: 126, one: 4, duration: 197}, 186.857, 405, 21.3},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := c.s.track()
			g := newGrid(&tr, &plan.Part{})
			near(t, "end of phrase 12", g.time(12*32), c.ends, thousandth)
			near(t, "tail", (c.s.duration-g.time(12*32))*c.s.bpm/60, c.tail, 0.051)
			if g.end() != c.counts {
				t.Errorf("%d counts, want %d", g.end(), c.counts)
			}
		})
	}
}

// E14: 125 played at 130 is 1.04 times as fast; 200 s become 192.308 s.
func TestPlayedFaster(t *testing.T) {
	m := Build(onePart(t, "bpm: 130", "{interval: jog, time: 400 counts}"),
		songs(song{file: "a.mp3", bpm: 125, duration: 200}))
	mu := m.Parts[0].Tracks[0]
	near(t, "speed", mu.Speed, 1.04, 1e-9)
	near(t, "played", mu.Played, 130, 1e-9)
	near(t, "class", mu.Duration/mu.Speed, 192.308, thousandth)
	// 400 counts are 192 s as recorded, and track time stays as recorded.
	m = Build(onePart(t, "bpm: 130", "{interval: jog, time: 384 counts}", "{pause: water, time: 8 counts}"),
		songs(song{file: "a.mp3", bpm: 125, duration: 200}))
	r := work(m)[1]
	near(t, "track time", r.TrackTime, 384*0.48, thousandth)
	near(t, "class time", r.ClassTime, 384*60.0/130, thousandth)
}

// E15: a file tagged 128 that really runs at 127.6: after 200 s the tag is
// 1.33 counts out. Rows follow the counts, not the tag.
func TestRowsFollowCounts(t *testing.T) {
	tr := song{file: "a.mp3", bpm: 127.6, duration: 260}.track()
	tr.BPM = 128
	m := Build(onePart(t, "", "{interval: jog, time: 424 counts}", "{pause: water, time: 8 counts}"),
		map[string]beat.Track{"a.mp3": tr})
	r := work(m)[1]
	near(t, "track time", r.TrackTime, 424*60/127.6, thousandth)
	near(t, "the tag would be out by", r.TrackTime-424*60/128.0, 0.623, thousandth)
}

// E16: a block of 20 counts and 12 of hold at 138 are 13.913 s, one phrase
// (the example is Parker's, "Hold it right there!").
func TestHoldFillsPhrase(t *testing.T) {
	c := onePart(t, "", `{block: A, moves: [{move: march, counts: 32}]}`, `{block: B, moves: [{move: march, counts: 32}]}`)
	b := c.Parts[0].Items[0].Work.(plan.Block)
	b.Moves = []plan.Step{{Move: "march", Counts: 20}}
	c.Parts[0].Items[0].Work = b
	m := Build(c, songs(song{file: "a.mp3", bpm: 138, duration: 240}))
	if len(m.Rows) != 3 || m.Rows[1].Kind != HoldRow || m.Rows[1].Counts != 12 {
		t.Fatalf("rows: %+v", m.Rows)
	}
	near(t, "block", m.Rows[0].Seconds, 8.696, thousandth)
	near(t, "hold", m.Rows[1].Seconds, 5.217, thousandth)
	near(t, "phrase", m.Rows[2].ClassTime, 13.913, thousandth)
	near(t, "spare", found(t, m, "spare-counts").Figures["spare_counts"], 12, 0)
}

// E17: moves A and B of 2 counts, 8-8, 4-4, 2-2, 1-1, each level filling a
// phrase: passes of 32, 16, 8, 4 counts, repeated 1, 2, 4, 8 times, 128
// counts, 58.182 s at 132.
func TestTaper(t *testing.T) {
	var steps []plan.Step
	for _, n := range []int{8, 4, 2, 1} {
		for range 8 / n {
			steps = append(steps, plan.Step{Move: "march", Counts: 2 * n}, plan.Step{Move: "step touch", Counts: 2 * n})
		}
	}
	c := onePart(t, "", `{block: A, moves: [{move: march, counts: 32}]}`)
	c.Parts[0].Items[0].Work = plan.Block{Times: 1, Moves: steps}
	m := Build(c, songs(song{file: "a.mp3", bpm: 132, duration: 240}))
	r := work(m)[0]
	if r.Counts != 128 || len(r.Moves) != 30 {
		t.Errorf("%d counts, %d moves", r.Counts, len(r.Moves))
	}
	near(t, "seconds", r.Seconds, 58.182, thousandth)
	for i, at := range map[int]int{0: 1, 2: 33, 6: 65, 14: 97} {
		if r.Moves[i].Count != at {
			t.Errorf("move %d starts on count %d, want %d", i, r.Moves[i].Count, at)
		}
	}
}

// E18: a super-set at 126, four times 32 counts: 60.952 s, three rounds
// 182.857 s.
func TestSuperset(t *testing.T) {
	var items []string
	for range 3 {
		items = append(items, `{set: squat, reps: "16 x 1-1"}`, `{set: overhead press, reps: "8 x 2-2"}`,
			`{set: bent-over row, reps: "16 x 1-1"}`, `{set: biceps curl, reps: "4 x 4-4"}`)
	}
	m := Build(onePart(t, "", items...), songs(song{file: "a.mp3", bpm: 126, duration: 240}))
	rows := work(m)
	near(t, "a round", rows[3].ClassTime+rows[3].Seconds, 60.952, thousandth)
	near(t, "three rounds", rows[11].ClassTime+rows[11].Seconds, 182.857, thousandth)
	for i, r := range rows {
		if r.Counts != 32 || r.Phrase != i+1 || r.Count != 1 {
			t.Errorf("%s: phrase %d count %d, %d counts", r.Item, r.Phrase, r.Count, r.Counts)
		}
	}
}

// E19: a change at count 65 of a track with count 1 at 2.000 s and 128 BPM
// comes at 32.000 s; cued 4 counts early at 30.125 s, 8 early at 28.250 s.
func TestCueTimes(t *testing.T) {
	for next, want := range map[string]float64{
		`{set: squat, reps: "8 x 2-2", weight: light}`:                     30.125,
		`{set: squat, reps: "8 x 2-2", weight: heavy}`:                     28.250, // other weights
		`{set: crunch, reps: "8 x 2-2", weight: light}`:                    28.250, // to the floor
		`{set: squat, reps: "8 x 2-2", weight: light, setup: 0.1s}`:        28.250,
		`{set: goblet squat, reps: "8 x 2-2", weight: light}`:              28.250, // a kettlebell
		`{pause: water, time: 30s}`:                                        30.125,
		`{set: wide squat, reps: "8 x 2-2", weight: light, range: half}`:   30.125,
		`{set: narrow squat, reps: "16 x 1-1", weight: light, on: phrase}`: 30.125,
	} {
		m := Build(onePart(t, "", `{set: squat, reps: "16 x 2-2", weight: light}`, next),
			songs(song{file: "a.mp3", bpm: 128, one: 2, duration: 240}))
		r := m.Rows[len(m.Rows)-1]
		if want == 28.250 && r.TrackTime > 32.001 { // a setup waits for the next eight; its cue comes with the wait
			r = m.Rows[len(m.Rows)-2]
		}
		near(t, next+": start", r.TrackTime, 32, thousandth)
		near(t, next+": cue", r.CueTime, want, thousandth)
	}
}
