package synth

import (
	"math"
	"math/rand/v2"
)

// grid is when the counts come.
type grid struct {
	times  []float64 // of every count and of the end [s]
	pickUp int       // counts before the first count 1
}

// newGrid lays the counts of a song out in time.
func newGrid(s Song) *grid {
	walk := newWalk(s.Seed, s.Feel.Drift)
	g := &grid{pickUp: s.PickUp}
	t := s.Lead + s.Ambient
	step := func(bpm float64) {
		g.times = append(g.times, t)
		t += 60 / (bpm * walk.at(len(g.times)))
	}
	for range s.PickUp {
		step(s.BPM)
	}
	for _, sec := range s.Sections {
		bpm := s.BPM
		if sec.BPM > 0 {
			bpm = sec.BPM
		}
		for range sec.Counts {
			step(bpm)
		}
	}
	g.times = append(g.times, t)
	return g
}

// at is the time of a place counted from the first count 1, in counts; it may
// lie between counts, in the pick-up (negative) or past the end.
func (g *grid) at(pos float64) float64 {
	p := pos + float64(g.pickUp)
	i := int(math.Floor(p))
	i = max(0, min(i, len(g.times)-2))
	return g.times[i] + (p-float64(i))*(g.times[i+1]-g.times[i])
}

// end is where the last count ends [s].
func (g *grid) end() float64 { return g.times[len(g.times)-1] }

// walk is a slow wandering of the tempo: three sines of long periods, never
// more than depth away from 1.
type walk struct {
	depth  float64
	period [3]float64 // [counts]
	phase  [3]float64
}

func newWalk(seed uint64, depth float64) walk {
	w := walk{depth: depth}
	rng := rand.New(rand.NewPCG(seed, 0xd21f7))
	for i, base := range [3]float64{37, 71, 149} {
		w.period[i] = base * (0.8 + 0.4*rng.Float64())
		w.phase[i] = 2 * math.Pi * rng.Float64()
	}
	return w
}

func (w walk) at(count int) float64 {
	sum := 0.0
	for i, p := range w.period {
		sum += math.Sin(2*math.Pi*float64(count)/p + w.phase[i])
	}
	return 1 + w.depth*sum/3
}
