package reading

const (
	// SlowestTaught and FastestTaught are the tempi that classes to music are taught
	// at [1/min] (common practice, no source).
	SlowestTaught, FastestTaught = 95.0, 165.0
	// nearTie is the share of the likeliest reading's odds from which another one is
	// as good: the same sound, coded another way, may turn them round.
	nearTie = 0.5
)

// taught reports whether a class can be taught to the counts of a reading.
func (r Reading) taught() bool {
	bpm := 60 / r.Period
	return bpm >= SlowestTaught && bpm <= FastestTaught
}

// preferred is the reading to count by, of some with the likeliest first: that
// one, or, where no class is taught at its tempo, the likeliest of those as good
// at whose tempo one is.
func preferred(sorted []Reading) int {
	if len(sorted) == 0 || sorted[0].taught() {
		return 0
	}
	for i, r := range sorted {
		if r.Odds < nearTie*sorted[0].Odds {
			break
		}
		if r.taught() {
			return i
		}
	}
	return 0
}
