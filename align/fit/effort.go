package fit

// effort is how hard a search tries.
type effort struct {
	ways  int // to one state that are followed
	steps int // tried
}

// The best plan of a part takes one way to every state; for the others more are
// followed: the three best, and one in reserve. A part done in rounds, where
// what is decided in the first holds for all, or one in which much must be left
// as it is, may have too many ways to go through; then only so many of the
// cheapest are followed past every item, and the plan found may not be the best.
var (
	forBest   = effort{ways: 1, steps: 300_000}
	forRounds = effort{ways: 1, steps: 40_000}
	forOthers = effort{ways: 4, steps: 40_000}
	forAny    = effort{ways: 1}
	followed  = 1500
)
