package score

import "math"

// Feel turns positions in counts into seconds: tempo, its drift, swing and
// looseness.
type Feel struct {
	meter  int
	swing  float64   // share of the first of a pair; 0.5 straight
	pair   float64   // length of such a pair [counts]
	Beats  []float64 // time of every count [s]
	Jitter float64   // standard deviation of a note's time [s]
}

// NewFeel lays out counts from start until length has passed [s].
func NewFeel(r Rand, s Style, start, length float64) Feel {
	f := Feel{meter: s.Meter, swing: r.Between(s.Swing[0], s.Swing[1]), pair: 0.5}
	if s.Steps == 4 && s.BPM[0] > 110 && r.Chance(0.3) || s.Sound == Soft && r.Chance(0.4) {
		f.pair = 1 // swung eighths
	}
	if r.Chance(0.55) {
		f.Jitter = r.Between(0.001, 0.012)
	}
	if r.Chance(0.3) {
		f.swing = 0.5
	}
	period := 60 / r.Between(s.BPM[0], s.BPM[1])
	drift := newDrift(r)
	for t, i := start, 0; t < length; i++ {
		f.Beats = append(f.Beats, t)
		t += period * drift.at(r, i)
	}
	return f
}

// At is the time of a position in counts [s].
func (f Feel) At(pos float64) float64 {
	pair := math.Floor(pos / f.pair)
	x := pos/f.pair - pair
	if x < 0.5 {
		x *= 2 * f.swing
	} else {
		x = f.swing + (x-0.5)*2*(1-f.swing)
	}
	pos = (pair + x) * f.pair
	i := int(math.Floor(pos))
	i = max(0, min(i, len(f.Beats)-2))
	return f.Beats[i] + (pos-float64(i))*(f.Beats[i+1]-f.Beats[i])
}

// drift says how the length of a count changes in the course of a song.
type drift struct {
	kind  string
	depth float64
	speed float64 // [1/count]
	phase float64
	walk  float64
	step  int // count at which the tempo changes
}

func newDrift(r Rand) *drift {
	d := &drift{phase: r.Between(0, 2*math.Pi)}
	d.kind = []string{"none", "wave", "walk", "step", "ramp", "loose"}[r.Weighted([]float64{55, 12, 14, 6, 5, 8})]
	switch d.kind {
	case "wave":
		d.depth, d.speed = r.Between(0.005, 0.035), r.Between(0.01, 0.1)
	case "walk":
		d.depth = r.Between(0.001, 0.006)
	case "step":
		d.depth, d.step = r.Between(-0.12, 0.12), 4*(4+r.IntN(24))
	case "ramp":
		d.depth = r.Between(-0.0012, 0.0012)
	case "loose":
		d.depth = r.Between(0.004, 0.025)
	}
	return d
}

// at is the length of count i relative to the nominal one.
func (d *drift) at(r Rand, i int) float64 {
	switch d.kind {
	case "wave":
		return 1 + d.depth*math.Sin(d.phase+2*math.Pi*d.speed*float64(i))
	case "walk":
		d.walk = 0.98*d.walk + d.depth*r.NormFloat64()
		return 1 + max(-0.06, min(0.06, d.walk))
	case "step":
		if i >= d.step {
			return 1 + d.depth
		}
	case "ramp":
		return max(0.8, min(1.25, 1+d.depth*float64(i)))
	case "loose":
		return 1 + d.depth*max(-2, min(2, r.NormFloat64()))
	}
	return 1
}
