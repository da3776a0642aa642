package midi

import "errors"

// Grid is the stretch of a file that can be used: one meter all along.
type Grid struct {
	From, To int // [ticks]
	Beat     int // ticks in a count
	Meter    int // counts in a bar
}

// Grid finds the longest stretch in one meter, and the counts in it. In
// compound meters the count is the dotted quarter.
func (f *File) Grid() (Grid, error) {
	meters := f.Meters
	if len(meters) == 0 || meters[0].Tick > 0 {
		meters = append([]Meter{{0, 4, 4}}, meters...)
	}
	var best Grid
	for i := 0; i < len(meters); {
		m, to := meters[i], f.Ticks
		for i++; i < len(meters); i++ {
			if meters[i].Beats != m.Beats || meters[i].Unit != m.Unit {
				to = meters[i].Tick
				break
			}
		}
		g := Grid{From: m.Tick, To: to, Beat: f.Division * 4 / m.Unit, Meter: m.Beats}
		if m.Unit == 8 && m.Beats%3 == 0 {
			g.Beat, g.Meter = 3*g.Beat, m.Beats/3
		}
		if to-m.Tick > best.To-best.From {
			best = g
		}
	}
	if best.Meter < 2 || best.Meter > 4 || best.To-best.From < 16*best.Beat {
		return best, errors.New("midi: no long stretch with 2, 3 or 4 counts a bar")
	}
	return best, nil
}

// kickKeys and snareKeys are of the General MIDI drum map.
var (
	kickKeys  = map[int]bool{35: true, 36: true}
	snareKeys = map[int]bool{38: true, 39: true, 40: true}
)

// Check reports why the notes do not bear out the file's own grid, if so: a
// file that was played in freely has bar lines that mean nothing.
func (f *File) Check(g Grid) error {
	onGrid, all := 0, 0
	var kick, snare [4]int
	for _, n := range f.Notes {
		if n.Tick < g.From || n.Tick >= g.To {
			continue
		}
		all++
		if near(n.Tick-g.From, g.Beat/4, g.Beat/16) || near(n.Tick-g.From, g.Beat/3, g.Beat/16) {
			onGrid++
		}
		if at := n.Tick - g.From + g.Beat/8; n.Channel == Drums && at%g.Beat < g.Beat/4 {
			if kickKeys[n.Key] {
				kick[at/g.Beat%g.Meter]++
			} else if snareKeys[n.Key] {
				snare[at/g.Beat%g.Meter]++
			}
		}
	}
	if all < 100 || float64(onGrid) < 0.9*float64(all) {
		return errors.New("midi: notes are off the grid")
	}
	if g.Meter == 4 && (snare[0]+snare[2] > snare[1]+snare[3]+8 || kick[1]+kick[3] > kick[0]+kick[2]+8) {
		return errors.New("midi: drums contradict the bar lines")
	}
	return nil
}

// near reports whether x is within tol of a multiple of step.
func near(x, step, tol int) bool {
	m := (x%step + step) % step
	return m <= tol || step-m <= tol
}
