package plan

import "math"

// Way is one way of a repetition and how fast it may go.
type Way struct {
	Name     string  // "down", "up", or "each way" where both are alike
	Counts   float64 // it takes
	Fine     float64 // fine at or above [s]
	TooFast  float64 // likely hard to control below [s]; 0 when nothing is too fast
	Evidence Evidence
	Source   string
}

// slowBeside is how many times as long the other way must be for a fast way to
// be judged alone: the load then comes from, or goes into, a controlled way.
const slowBeside = 2

// Ways lists the ways of a repetition with the limit that holds for each. The
// limit is that of the rhythm's range.
func (l Limit) Ways(r Rhythm) []Way {
	both := Way{"each way", 0, l.Fine, l.TooFast, l.Evidence, l.Source}
	switch {
	case r.Pulse:
		both.Counts = 0.5
		return []Way{both}
	case r.Down == r.Up:
		both.Counts = float64(r.Down)
		return []Way{both}
	}
	return []Way{l.way("down", l.Down, r.Down, r.Up), l.way("up", l.Up, r.Up, r.Down)}
}

// way is one way of a rhythm whose ways differ.
func (l Limit) way(name string, alone WayLimit, counts, other int) Way {
	w := Way{name, float64(counts), l.Fine, l.TooFast, l.Evidence, l.Source}
	if alone.Fine > 0 && other >= slowBeside*counts {
		w.Fine, w.TooFast, w.Evidence, w.Source = alone.Fine, 0, alone.Evidence, alone.Source
	}
	return w
}

// FloatsBelow is the time of one way [s] below which PeakLoad is over 1, so
// that the load floats at the top: T = π·√(d/2g). It is 0 for a class without
// a path and for a ballistic one.
func (l Limit) FloatsBelow() float64 {
	if l.Ballistic {
		return 0
	}
	return math.Pi * math.Sqrt(l.Path/(2*gravity))
}

// Control is how well a rhythm can be held.
type Control string

const (
	InControl  Control = ""
	Borderline Control = "may be hard to control"
	OutOfReach Control = "likely hard to control" // by published figures, her own, or because the load floats
)

// Seconds is how long the way takes at a tempo [s].
func (w Way) Seconds(bpm float64) float64 { return w.Counts * 60 / bpm }

// Judge finds the way of a rhythm that is hardest to control at a tempo, and
// how hard it is. The limit is that of the range, r. What rests on an
// assumption or on practice alone is at most borderline, unless the load
// floats over its full range.
func (l Limit) Judge(rhythm Rhythm, r Range, bpm float64) (Way, Control) {
	worst, grade := Way{}, InControl
	for _, w := range l.Ways(rhythm) {
		g := l.judge(w, r, w.Seconds(bpm))
		nearer := w.Seconds(bpm)/w.Fine < worst.Seconds(bpm)/worst.Fine
		if worst.Name == "" || harder(g) > harder(grade) || g == grade && nearer {
			worst, grade = w, g
		}
	}
	return worst, grade
}

// tick is below what a figure of seconds says: they are shown in
// milliseconds.
const tick = 0.0005

func (l Limit) judge(w Way, r Range, seconds float64) Control {
	switch {
	case seconds > w.Fine-tick:
		return InControl
	case seconds > w.TooFast-tick:
		return Borderline
	case w.Evidence == Published, w.Evidence == Own, r != HalfRange && seconds < l.FloatsBelow():
		return OutOfReach
	}
	return Borderline
}

func harder(c Control) int {
	switch c {
	case Borderline:
		return 1
	case OutOfReach:
		return 2
	}
	return 0
}
