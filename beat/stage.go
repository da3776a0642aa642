package beat

import "slices"

// Stage is a stage of the analysis that a measurement can leave out.
type Stage string

const (
	Ear    Stage = "ear"    // the learned activation; without it, onset strength takes its place
	Tempo  Stage = "tempo"  // the tempo curve; without it, the counts of the whole track are decoded in one go
	Octave Stage = "octave" // weighing half, double and off the beat; without it, the first reading stands
	Grid   Stage = "grid"   // attacks and straight grids; without it, counts stay where they were decoded
	Bars   Stage = "bars"   // the vote on count 1; without it, the ear's own bars stand
)

// Stages lists them in the order of the data.
var Stages = []Stage{Ear, Tempo, Octave, Grid, Bars}

// without lists the stages left out.
type without []Stage

func (w without) has(s Stage) bool { return slices.Contains(w, s) }
