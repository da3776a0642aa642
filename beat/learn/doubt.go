package learn

import "slices"

const (
	// fastDoubt is the tempo from which half of it is as good an answer [1/min]:
	// the test corpus marks its tracks from there on, and people tap half of it
	// as readily.
	//
	// Ref: McKinney & Moelants 2006, "Ambiguity in tempo perception: what draws
	// listeners to different metrical levels?" (Music Perception 24), from
	// memory.
	fastDoubt = 160

	// OctaveDoubt marks tracks of which half or double tempo is as good an answer.
	OctaveDoubt = "octave"
)

// halfTime are the styles made with the snare on count 3 alone, so that they
// feel like half their tempo.
var halfTime = []string{"half-time", "trap"}

// Doubt says, from how a track was made, what of it listeners would not agree
// on: OctaveDoubt or nothing. bpm is the tempo of its truth [1/min].
func (it Item) Doubt(bpm float64) string {
	if bpm >= fastDoubt || it.Kind == "synth" && slices.Contains(halfTime, it.Source) {
		return OctaveDoubt
	}
	return ""
}
