package plan

// Rhythm is how the counts of one repetition are shared out. A pulse takes
// one count, half of it each way, and has none of the other figures.
type Rhythm struct {
	Down, Hold, Up, Rest int // counts
	Pulse                bool
}

// Counts is the number of counts of one repetition.
func (r Rhythm) Counts() int {
	if r.Pulse {
		return 1
	}
	return r.Down + r.Hold + r.Up + r.Rest
}
