package plan

// Item is one thing the class does: a block, a set, an interval or a pause.
type Item struct {
	Pos    Pos
	Name   string // "A", "bent-over row", "standing climber", "water"
	On     Snap
	Cue    string // the instructor's own words
	Setup  Length // needed before the item starts, for weights or the way to the floor
	Easier string
	Harder string
	Work   Work
}

// Work is what an item consists of: Block, Set, Interval or Pause.
type Work interface{ work() }

// Snap is what an item's start and length are laid on.
type Snap string

const (
	OnDefault Snap = "" // block: phrase; set: eight; interval, pause: nearest eight
	OnPhrase  Snap = "phrase"
	OnEight   Snap = "eight"
	OnCount   Snap = "count"
	OnClock   Snap = "clock" // by the clock, not by the music
)

// Block is choreography that fills whole phrases.
type Block struct {
	Sides Sides // Both repeats it with the other lead
	Times int   // at least 1
	Moves []Step
}

// Step is one move of a block and the counts it gets.
type Step struct {
	Pos    Pos
	Move   string
	Counts int
}

// Set is a strength exercise counted to the music.
type Set struct {
	Move   string
	Reps   []Reps
	Weight string // "heavy", "2 x 6 kg", as written; empty when not given
	Range  Range
	Sides  Sides
}

// Reps is a number of repetitions in one rhythm.
type Reps struct {
	N      int
	Rhythm Rhythm
}

// Range is how far a move goes: its whole range or about half of it.
type Range string

const (
	FullRange Range = "full"
	HalfRange Range = "half"
)

// Interval is timed work.
type Interval struct {
	Move string
	Time Length
}

// Pause is water, a change of weights, or the way to the floor.
type Pause struct {
	Time Length
}

func (Block) work()    {}
func (Set) work()      {}
func (Interval) work() {}
func (Pause) work()    {}
