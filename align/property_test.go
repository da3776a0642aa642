package align

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat"
	"onphrase/plan"
)

const trials = 200

// random makes a class of up to four parts on music with tags, bridges,
// counts a few milliseconds off, and doubtful phrases.
func random(r *rand.Rand) (*plan.Class, map[string]beat.Track) {
	c := &plan.Class{Name: "Random", Slot: 1800, Catalog: plan.Builtin()}
	tracks := map[string]beat.Track{}
	line := 1
	for n := range 1 + r.IntN(4) {
		p := plan.Part{Name: fmt.Sprint("Part ", n), Kind: plan.Mixed}
		for k := range 1 + r.IntN(3) {
			file := fmt.Sprintf("%d-%d.mp3", n, k)
			p.Tracks = append(p.Tracks, plan.TrackRef{File: file})
			if r.IntN(12) > 0 {
				tracks[file] = randomTrack(r, file)
			}
		}
		if r.IntN(3) == 0 {
			p.BPM = 120 + float64(r.IntN(20))
		}
		if r.IntN(4) == 0 {
			p.Start.Phrase = 1 + r.IntN(3)
		}
		p.Taught = []plan.Taught{plan.AsHeard, plan.AsHeard, plan.Half, plan.Double}[r.IntN(4)]
		for range 1 + r.IntN(8) {
			line++
			p.Items = append(p.Items, randomItem(r, line))
		}
		c.Parts = append(c.Parts, p)
	}
	return c, tracks
}

func randomTrack(r *rand.Rand, file string) beat.Track {
	lengths := ""
	for range 12 {
		lengths += []string{"32 ", "32 ", "32 ", "32 ", "4 ", "16 ", "8 ", "20 ", "40 ", "32@0.2 ", "5 "}[r.IntN(11)]
	}
	t := song{
		file: file, bpm: 96 + 50*r.Float64(), one: 3 + 5*r.Float64(), pickup: r.IntN(5),
		duration: 60 + 180*r.Float64(), phrases: lengths + "32",
	}.track()
	for i := range t.Beats {
		t.Beats[i] += 0.01 * (r.Float64() - 0.5)
	}
	for i := range t.Phrases {
		t.Phrases[i].Time = t.Beats[t.Phrases[i].Beat]
	}
	return t
}

func randomItem(r *rand.Rand, line int) plan.Item {
	it := plan.Item{Pos: plan.Pos{Line: line, Col: 1}, Name: fmt.Sprint("item ", line)}
	it.On = []plan.Snap{"", "", "", plan.OnPhrase, plan.OnEight, plan.OnCount, plan.OnClock}[r.IntN(7)]
	if r.IntN(4) == 0 {
		it.Setup = []plan.Length{{Counts: 8}, {Seconds: 3.3}}[r.IntN(2)]
	}
	sides := []plan.Sides{"", plan.Both, plan.Left}[r.IntN(3)]
	switch r.IntN(4) {
	case 0:
		it.Work = plan.Block{Times: 1 + r.IntN(2), Sides: sides,
			Moves: []plan.Step{{Move: "march", Counts: 16}, {Move: "grapevine", Counts: 8 + 8*r.IntN(2)}}}
	case 1:
		move := []string{"squat", "deadlift", "one-arm row", "lunge", "squat jump"}[r.IntN(5)]
		rhythm := []plan.Rhythm{{Down: 2, Up: 2}, {Down: 1, Up: 1}, {Down: 3, Up: 1}, {Down: 4, Up: 4}}[r.IntN(4)]
		it.Work = plan.Set{Move: move, Sides: sides, Range: plan.FullRange, Reps: []plan.Reps{
			{N: 1 + r.IntN(16), Rhythm: rhythm}, {N: 1 + r.IntN(16), Rhythm: plan.Rhythm{Pulse: true}}}}
	case 2:
		it.Work = plan.Interval{Move: "jog", Time: plan.Length{Seconds: 5 + 50*r.Float64()}, Sides: sides}
	default:
		it.Work = plan.Pause{Time: []plan.Length{{Counts: 1 + r.IntN(64)}, {Seconds: 30}}[r.IntN(2)]}
	}
	if r.IntN(6) == 0 {
		it.Known = []plan.Known{{Code: []string{spareCounts.Code, oddPhrase.Code, rhythmTooFast.Code}[r.IntN(3)]}}
	}
	return it
}

func forRandom(t *testing.T, do func(t *testing.T, c *plan.Class, tracks map[string]beat.Track)) {
	t.Helper()
	for seed := range uint64(trials) {
		c, tracks := random(rand.New(rand.NewPCG(seed, 7)))
		if t.Run(fmt.Sprint("seed ", seed), func(t *testing.T) { do(t, c, tracks) }); t.Failed() {
			return
		}
	}
}

// Rows follow each other without a gap or an overlap, in class time and on
// each track.
func TestRowsInOrder(t *testing.T) {
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		m := Build(c, tracks)
		now := 0.0
		for i, r := range m.Rows {
			if r.Row != i+1 {
				t.Errorf("row %d is numbered %d", i+1, r.Row)
			}
			if r.Seconds < 0 || math.Abs(r.ClassTime-now) > 0.0015 {
				t.Errorf("row %d starts at %.3f, the last ended at %.3f", r.Row, r.ClassTime, now)
			}
			now = r.ClassTime + r.Seconds
			if i > 0 && r.Placed && r.Track == m.Rows[i-1].Track && r.Part == m.Rows[i-1].Part &&
				m.Rows[i-1].Kind != ChangeRow && r.TrackTime <= m.Rows[i-1].TrackTime {
				t.Errorf("row %d does not come later on its track", r.Row)
			}
		}
		if math.Abs(m.Length-now) > 0.0015 {
			t.Errorf("length %.3f, last row ends at %.3f", m.Length, now)
		}
	})
}

// Every item appears, in its order, with exactly its counts.
func TestEveryItemAppears(t *testing.T) {
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		m := Build(c, tracks)
		counts := map[int]int{}
		var order []int
		for _, r := range m.Rows {
			if !r.Kind.Work() {
				continue
			}
			counts[r.Line] += r.Counts
			if len(order) == 0 || order[len(order)-1] != r.Line {
				order = append(order, r.Line)
			}
		}
		i := 0
		for _, p := range c.Parts {
			for _, it := range p.Items {
				if i >= len(order) || order[i] != it.Pos.Line {
					t.Fatalf("%s is missing or out of order: %v", it.Name, order)
				}
				i++
				want := -1
				switch w := it.Work.(type) {
				case plan.Block:
					want = w.Counts()
				case plan.Set:
					want = w.Counts()
				case plan.Pause:
					if w.Time.Counts > 0 {
						want = w.Time.Counts
					}
				}
				if want >= 0 && counts[it.Pos.Line] != want {
					t.Errorf("%s has %d counts, want %d", it.Name, counts[it.Pos.Line], want)
				}
			}
		}
	})
}

// Items start where they should: blocks on count 1 of a phrase, sets on an
// eight, each as on: says otherwise.
func TestItemsSnap(t *testing.T) {
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		for _, p := range placeClass(c, tracks).parts {
			for i := range p.rows {
				r := &p.rows[i]
				if r.music == nil || r.item == nil || (i > 0 && p.rows[i-1].item == r.item && p.rows[i-1].run == r.run) {
					continue
				}
				g := r.music.grid
				at := g.at(r.from)
				switch snap := snapOf(r.item); {
				case snap == plan.OnPhrase && at.count != 1, snap == plan.OnEight && at.phrase > 0 && at.count%8 != 1:
					t.Errorf("%s, laid on %s, starts on phrase %d count %d", r.Item, snap, at.phrase, at.count)
				}
				if r.asked == 0 && math.Abs(g.time(r.from)-r.at) > beatError {
					t.Errorf("%s starts between counts", r.Item)
				}
			}
		}
	})
}

func TestBuildRepeats(t *testing.T) {
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		if diff := cmp.Diff(Build(c, tracks), Build(c, tracks)); diff != "" {
			t.Error(diff)
		}
	})
}

// Shifting all counts of a track shifts every time on it by as much and
// changes nothing else.
func TestShiftedMusic(t *testing.T) {
	const shift = 1.25
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		c.Parts = c.Parts[:1]
		c.Parts[0].BPM, c.Slot = 0, 0
		for i := range c.Parts[0].Items {
			c.Parts[0].Items[i].Setup = plan.Length{} // a longer lead-in leaves less of it
		}
		later := map[string]beat.Track{}
		for name, tr := range tracks {
			later[name] = shifted(tr, shift)
		}
		a, b := Build(c, tracks), Build(c, later)
		if len(a.Rows) != len(b.Rows) {
			t.Fatalf("%d rows, %d when shifted", len(a.Rows), len(b.Rows))
		}
		for i := range a.Rows {
			x, y := a.Rows[i], b.Rows[i]
			if x.Item != y.Item || x.Phrase != y.Phrase || x.Count != y.Count || x.Counts != y.Counts {
				t.Fatalf("row %d: %+v\nshifted: %+v", i+1, x, y)
			}
			if moved := x.Placed && x.Kind != LeadIn && x.Kind != ChangeRow; moved &&
				math.Abs(y.TrackTime-x.TrackTime-shift) > 0.0015 {
				t.Errorf("row %d moved by %.4f", i+1, y.TrackTime-x.TrackTime)
			}
		}
	})
}

func shifted(t beat.Track, by float64) beat.Track {
	t.Duration += by
	t.Beats = append([]float64(nil), t.Beats...)
	t.Phrases = append([]beat.Phrase(nil), t.Phrases...)
	for i := range t.Beats {
		t.Beats[i] += by
	}
	for i := range t.Phrases {
		t.Phrases[i].Time += by
	}
	return t
}

// Cues come exactly so many counts before their row, and never on it.
func TestCuesComeEarly(t *testing.T) {
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		for _, p := range placeClass(c, tracks).parts {
			for i := range p.rows {
				r := &p.rows[i]
				if r.CueCounts == 0 || r.ClassTime == 0 {
					continue
				}
				early := r.ClassTime - r.CueTime
				per := 60 / (r.music.grid.bpm * r.music.grid.speed)
				// By the clock up to a count is missing, and half of one in a tag of 5 at half time.
				if early <= 0 || (r.CueTime > 0 && math.Abs(early-float64(r.CueCounts)*per) > 1.5*per+beatError) {
					t.Errorf("row %d: %d counts early are %.3f s at %.3f s a count", r.Row.Row, r.CueCounts, early, per)
				}
			}
		}
	})
}

// BenchmarkBuild lays and checks a class of 40 parts.
func BenchmarkBuild(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	c, tracks := random(r)
	for len(c.Parts) < 40 {
		more, t := random(r)
		c.Parts = append(c.Parts, more.Parts...)
		for k, v := range t {
			tracks[k] = v
		}
	}
	for b.Loop() {
		Build(c, tracks)
	}
}
