package reading

import (
	"math"
	"testing"
)

const fps = 100.0

// row is n times, the first at start, each a period after the one before [s].
func row(start, period float64, n int) []float64 {
	var x []float64
	for i := range n {
		x = append(x, start+float64(i)*period)
	}
	return x
}

// sounding is evidence of some seconds: one curve a range and the harmony's, with
// sounds at the given times in some of them, and chords and bass notes that
// last the given times in turn [s]. The music repeats itself every half second.
func sounding(seconds float64, sounds map[int][]float64, chord float64) Evidence {
	all := make([][]float64, 6)
	for b := range all {
		all[b] = make([]float64, int(seconds*fps))
		for _, t := range sounds[b] {
			if i := int(math.Round(t * fps)); i < len(all[b]) {
				all[b][i] = 4
			}
		}
	}
	return Evidence{Curves: all, FPS: fps, Courses: []Course{chords(seconds, 0, chord), chords(seconds, 0, chord),
		chords(seconds, 0, chord).Centred()}, Period: every(0.5)}
}

const chordFPS = 20

// chords are pitches that change every so many seconds from the first change on.
func chords(seconds, first, every float64) Course {
	return NewCourse(chordFPS, 0, int(seconds*chordFPS), func(i int) []float32 {
		row := make([]float32, 5)
		n := int(math.Floor((float64(i)/chordFPS - first) / every))
		row[((n*2)%5+5)%5] = 1
		return row
	})
}

// four on the floor at 120: a kick on each count, a snare on every second, hats
// halfway between, the harmony on every fourth.
func dance() Evidence {
	return sounding(40, map[int][]float64{0: row(0, 0.5, 80), 3: row(0.5, 1, 40), 4: row(0.25, 0.5, 80), 5: row(0, 2, 20)},
		2)
}

// heard are the clues of some beats.
func (e Evidence) heard(beats []float64) Clues {
	return e.hear(Reading{Beats: beats, Period: usual(beats)})
}

// Every group of clues hears what it is there for.
func TestHear(t *testing.T) {
	const perBand = 10
	on, off := dance().heard(row(0, 0.5, 80)), dance().heard(row(0.25, 0.5, 79))
	half, fast := dance().heard(row(0, 1, 40)), dance().heard(row(0, 0.25, 160))
	backbeat := sounding(40, map[int][]float64{0: row(0, 1, 40), 3: row(0.5, 1, 40)}, 2)
	backOn, backHalf := backbeat.heard(row(0, 0.5, 80)), backbeat.heard(row(0, 1, 40))
	triplets, dotted := dance().heard(row(0, 1./3, 120)), dance().heard(row(0, 0.75, 53))
	for _, c := range []struct {
		name       string
		at         int
		more, less Clues
	}{
		{"the kick on the beat", 0, on, off},
		{"the kick halfway", halfway, off, on},
		{"the hat halfway", 4*perBand + halfway, on, off},
		{"the snare on every second beat", 3*perBand + 6, on, half},
		{"the kick on every third beat", 7, triplets, on},
		{"the harmony on every fourth beat", 5*perBand + 8, on, off},
		{"every second half", 3*perBand + 9, off, on},
		{"beats like the one before", 60, triplets, on},
		{"beats like the second before", 61, on, triplets},
		{"beats like the third before", 62, triplets, on},
		{"faster than usual", 66, fast, on},
		{"far from the usual", 67, half, on},
		{"much faster", 68, fast, half},
		{"much slower", 69, half, fast},
		{"kick and snare by turns", 71, on, half},
		{"kick and snare a beat apart", 70, backOn, backHalf},
		{"chords change on the beat", 72, on, off},
		{"chords change halfway", 72 + halfway, off, on},
		{"chords change on every fourth beat", 72 + 8, on, half},
		{"chords change on every second beat", 72 + 6, half, triplets},
		{"chords change on every eighth beat", 72 + 9, fast, dotted},
		{"bass notes change on the beat", 102, on, off},
		{"the spectrum changes on the beat", 132, on, off},
		{"at the level of the repetition", 162 + 5, on, half},
		{"at twice its period", 162 + 8, half, on},
		{"at half its period", 162 + 2, fast, on},
	} {
		if c.more[c.at] < c.less[c.at]+0.05 {
			t.Errorf("%s: clue %d is %.2f, not above %.2f", c.name, c.at, c.more[c.at], c.less[c.at])
		}
	}
	if len(on) != len(weights) {
		t.Errorf("%d clues, %d weights", len(on), len(weights))
	}
}

func TestChoose(t *testing.T) {
	all := []Reading{
		{Beats: row(0, 0.25, 160), Period: 0.25}, {Beats: row(0.25, 0.5, 79), Period: 0.5},
		{Beats: row(0, 0.5, 80), Period: 0.5}, {Beats: row(0, 0.75, 53), Period: 0.75},
		{Beats: row(0.01, 0.5, 79), Period: 0.5},
	}
	Listen(all, dance(), nil)
	all = Choose(all)
	if len(all) != 4 {
		t.Errorf("%d readings, want 4: two mean the same", len(all))
	}
	if got := all[0]; got.Period != 0.5 || got.Beats[0] > 0.02 || got.Odds < 0.5 {
		t.Errorf("first a beat at %.2f s, every %.2f s, odds %.2f", got.Beats[0], got.Period, got.Odds)
	}
	sum := 0.0
	for _, r := range all {
		sum += r.Odds
	}
	if math.Abs(sum-1) > 1e-9 {
		t.Errorf("the odds add up to %v", sum)
	}
}

// With nothing but hats between the counts, the chords tell where these are.
func TestChooseByChords(t *testing.T) {
	for _, first := range []float64{0, 0.25} {
		music := sounding(60, map[int][]float64{4: row(0.25, 0.5, 120)}, 2)
		for i := range music.Courses {
			music.Courses[i] = chords(60, first, 2)
		}
		all := []Reading{{Beats: row(0.25, 0.5, 119), Period: 0.5}, {Beats: row(0, 0.5, 120), Period: 0.5}}
		Listen(all, music, nil)
		if got := Choose(all)[0]; got.Beats[0] != first {
			t.Errorf("chords change at %v s, the first count is at %v s, odds %.2f", first, got.Beats[0], got.Odds)
		}
	}
}

func TestLead(t *testing.T) {
	all := []Reading{{Beats: row(0, 0.5, 80), Period: 0.5}, {Beats: row(0, 1, 40), Period: 1}}
	if got := Lead(all, row(0.01, 1, 40)); got[0].Period != 1 || len(got) != 2 {
		t.Errorf("the reading of the counts does not lead: every %v s of %d", got[0].Period, len(got))
	}
	if got := Lead(all, row(0.3, 0.7, 50)); len(got) != 3 || math.Abs(got[0].Period-0.7) > 1e-9 {
		t.Errorf("counts that no reading is like become none: %d readings", len(got))
	}
	if got := Lead(all, nil); len(got) != 2 {
		t.Errorf("%d readings without counts, want the 2 there were", len(got))
	}
}
