// Package pulse places the beats on a curve that says, frame by frame, how
// likely a beat is.
//
// It looks for the likeliest chain of beats under a bar-pointer model: a
// pointer runs through the beat at a tempo that may change at each beat a
// little, and rarely by a jump. The curve may come from onset strengths or
// from a learned model; nothing else of the sound is looked at.
//
// Ref: Krebs, Böck & Widmer 2015, "An efficient state-space model for joint
// tempo and meter tracking" (ISMIR), for the states, transitions and
// observations. Inside a beat their chain is deterministic, so its likelihood
// is a difference of prefix sums, and only the beats' first frames need
// states: the semi-Markov form written here gives the same path for less.
package pulse
