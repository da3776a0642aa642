package synth

import "math/rand/v2"

var (
	majorScale = [7]int{0, 2, 4, 5, 7, 9, 11}
	minorScale = [7]int{0, 2, 3, 5, 7, 8, 10}
)

// progressions are chord roots as steps of the scale, 0 the tonic.
var progressions = map[bool][][4]int{ // by minor
	false: {{0, 4, 5, 3}, {5, 3, 0, 4}, {0, 5, 3, 4}, {3, 4, 5, 0}, {0, 2, 3, 4}, {1, 4, 0, 5}},
	true:  {{0, 5, 2, 6}, {0, 3, 5, 6}, {5, 6, 0, 0}, {0, 2, 6, 3}, {0, 6, 5, 6}, {3, 0, 5, 6}},
}

// harmony is the chords of a song.
type harmony struct {
	key   Key
	tones int // notes in a chord
	calm  [4]int
	full  [4]int
	other [4]int // for the bridge
}

// newHarmony chooses three progressions that differ.
func newHarmony(key Key, tones int, rng *rand.Rand) harmony {
	all := progressions[key.Minor]
	pick := rng.Perm(len(all))
	return harmony{key: key, tones: tones, calm: all[pick[0]], full: all[pick[1]], other: all[pick[2]]}
}

// root is the step of the scale that the chord of a bar stands on. Chords
// change every bar where the song is full, else every other bar.
func (h harmony) root(p Part, bar int) int {
	switch p {
	case Drop, Outro:
		return h.full[bar%4]
	case Bridge, Tag:
		return h.other[bar%4]
	case Build:
		return h.full[bar/2%4]
	}
	return h.calm[bar/2%4]
}

// pitch is the MIDI note number of a step of the scale; step 0 lies in octave
// 4 (middle C) and steps may run below 0 and above 6.
func (h harmony) pitch(step int) float64 {
	scale := majorScale
	if h.key.Minor {
		scale = minorScale
	}
	octave, in := step/7, step%7
	if in < 0 {
		octave, in = octave-1, in+7
	}
	return float64(60 + h.key.Root + 12*octave + scale[in])
}

// chord is the notes on a root, folded into the octave above low so that one
// chord moves to the next by the least way.
func (h harmony) chord(root int, low float64) []float64 {
	var notes []float64
	for i := range h.tones {
		notes = append(notes, fold(h.pitch(root+2*i), low))
	}
	return notes
}

// fold moves a pitch by octaves into [low, low+12).
func fold(pitch, low float64) float64 {
	for pitch < low {
		pitch += 12
	}
	for pitch >= low+12 {
		pitch -= 12
	}
	return pitch
}

// onChord reports whether a step of the scale belongs to the triad on root.
func onChord(step, root int) bool {
	in := ((step-root)%7 + 7) % 7
	return in == 0 || in == 2 || in == 4
}
