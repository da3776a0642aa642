// Package tempo estimates how fast the music goes: the period that its onsets
// repeat with as time goes on, and the other readings of it, at half, double
// and three-halves, among which the sound has to decide.
package tempo
