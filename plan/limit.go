package plan

import "math"

// Limit is how fast a class of movement can go and still be controlled over
// its full range: seconds for one phase (one way) of a repetition.
type Limit struct {
	Class    string
	Path     float64 // way of the load in one phase at full range [m]; 0 when it does not decide
	Fine     float64 // fine at or above [s]
	TooFast  float64 // likely hard to control below [s]
	TooSlow  float64 // of a swing: above, it no longer swings [s]; 0 when there is no such limit
	Evidence Evidence
	Source   string

	Down, Up  WayLimit // of one fast way beside a slow one; not set where Fine and TooFast hold for it, too
	Ballistic bool     // the load is thrown by design: there is no half range, and PeakLoad does not judge it
}

// WayLimit is the limit of one way that stands beside one at least twice as
// long, as in 3-1 and 1-3. Common practice has no figure below which it is too
// fast; below Fine it is to be watched.
type WayLimit struct {
	Fine     float64 // fine at or above [s]; 0 when not set
	Evidence Evidence
	Source   string
}

// Evidence is how well a limit is founded.
type Evidence string

const (
	Published      Evidence = "published"
	CommonPractice Evidence = "common practice"
	Assumption     Evidence = "assumption"
	Own            Evidence = "own figures" // set by the user, who need not say why
)

// PulseClass is the class of movement of every move done as pulses, whatever
// its own class.
const PulseClass = "pulse"

// In returns the limit for a range. At peak acceleration π²d/2T² the time for
// the same effort goes with the root of the path, so half the range takes
// 0.707 of the time. A ballistic movement has no half range.
func (l Limit) In(r Range) Limit {
	if r != HalfRange || l.Ballistic {
		return l
	}
	l.Path *= 0.5
	l.Fine *= math.Sqrt(0.5)
	l.TooFast *= math.Sqrt(0.5)
	l.TooSlow *= math.Sqrt(0.5)
	l.Down.Fine *= math.Sqrt(0.5)
	l.Up.Fine *= math.Sqrt(0.5)
	return l
}

// gravity is the standard acceleration of free fall [m/s²].
//
// Ref: 3rd CGPM (1901).
const gravity = 9.80665

// PeakLoad is the peak acceleration of the load, as a share of gravity, when
// one phase takes the given seconds: R = π²·d/(2·g·T²) = 0.503·d/T² for a
// path d from rest to rest with a cosine profile. At 1 the load floats at the
// top: momentum moves it, not muscle. It is 0 for a class without a path.
func (l Limit) PeakLoad(phase float64) float64 {
	if phase <= 0 {
		return 0
	}
	return math.Pi * math.Pi * l.Path / (2 * gravity * phase * phase)
}
