package tempo

import "math"

const (
	shortestStretch = 12.0 // [s]: a blip between two songs is no song
	octaveSlack     = 0.03 // how exactly a factor of two must be met, relative
)

// Stretch is a part of a track within which the tempo makes no jump.
type Stretch struct {
	From, To float64 // [s]
	Curve    Curve
}

// Stretches divides the first duration seconds of a curve at its jumps. A
// jump to exactly half or double is none: the music goes on, and only another
// level of it repeats more strongly.
func (c Curve) Stretches(duration float64) []Stretch {
	c = c.foldOctaves()
	var all []Stretch
	from := 0.0
	for i := 1; i < len(c.Period); i++ {
		if math.Abs(math.Log(c.Period[i]/c.Period[i-1])) <= glideLimit {
			continue
		}
		to := c.Centre + (float64(i)-0.5)*c.Hop
		if to-from >= shortestStretch && duration-to >= shortestStretch {
			all = append(all, Stretch{from, to, c})
			from = to
		}
	}
	all = append(all, Stretch{from, duration, c})
	for i := range all {
		all[i].Curve = c.within(all[i].From, all[i].To)
	}
	return all
}

// foldOctaves takes jumps by a factor of two out.
func (c Curve) foldOctaves() Curve {
	d := c.Times(1)
	factor := 1.0
	for i := 1; i < len(c.Period); i++ {
		jump := c.Period[i] / c.Period[i-1]
		for _, octave := range []float64{2, 0.5} {
			if math.Abs(math.Log(jump/octave)) < octaveSlack {
				factor /= octave
			}
		}
		d.Period[i] = c.Period[i] * factor
	}
	return d
}

// within is the curve with the periods outside a stretch of time replaced by
// the nearest inside, so that a neighbour's tempo does not show.
func (c Curve) within(from, to float64) Curve {
	first := max(0, int(math.Ceil((from-c.Centre)/c.Hop)))
	last := min(len(c.Period)-1, int(math.Floor((to-c.Centre)/c.Hop)))
	if first > last {
		return c
	}
	return Curve{Period: c.Period[first : last+1], Hop: c.Hop, Centre: c.Centre + float64(first)*c.Hop}
}
