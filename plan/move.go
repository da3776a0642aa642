package plan

// Move is an entry of the catalogue.
type Move struct {
	Name      string
	Also      []string // other names instructors use
	Class     string   // class of movement, a key of Catalog.Limits; empty for moves without a limit
	Pattern   string   // push, pull, hinge, squat, lunge, core, carry, locomotion...
	Counts    int      // counts of one repetition in choreography
	Switches  bool     // one repetition ends on the other foot: the lead changes
	Impact    Impact
	Equipment []string
}

// Impact is how hard the feet land.
type Impact string

const (
	NoImpact   Impact = "none"
	LowImpact  Impact = "low"
	HighImpact Impact = "high"
)

// Limit is how fast a class of movement can go and still be controlled over
// its full range: seconds for one phase (one way) of a repetition.
type Limit struct {
	Class    string
	Fine     float64 // fine at or above [s]
	TooFast  float64 // likely hard to control below [s]
	Evidence string  // published, common practice, assumption
	Source   string
}
