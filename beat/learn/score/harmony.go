package score

// harmony is the key of a song and its chords, one for each stretch.
type harmony struct {
	key   int     // MIDI key of the tonic, 36-47
	scale []int   // semitones
	loop  []int   // degrees of the scale
	every int     // counts that a chord lasts
	early float64 // how far before the bar chords and bass move [counts]
}

var scales = [][]int{
	{0, 2, 4, 5, 7, 9, 11}, {0, 2, 3, 5, 7, 8, 10}, {0, 2, 3, 5, 7, 9, 10}, {0, 1, 3, 5, 7, 8, 10}, {0, 2, 4, 5, 7, 9, 10},
}

var loops = [][]int{
	{0, 4, 5, 3}, {5, 3, 0, 4}, {0, 3, 4, 3}, {0, 5, 3, 4}, {0, 0, 3, 4}, {0, 6, 5, 4}, {0, 0, 0, 0}, {0, 3}, {1, 4, 0, 0},
	{0, 0, 0, 0, 3, 3, 0, 0, 4, 3, 0, 4}, {0, 2, 5, 3}, {5, 4, 3, 4}, {0, 6}, {3, 4, 5, 0},
}

func newHarmony(r Rand, s Style) harmony {
	h := harmony{key: 36 + r.IntN(12), scale: Pick(r, scales), loop: Pick(r, loops), every: s.Meter}
	switch x := r.Float64(); {
	case x < 0.18:
		h.every = 2 * s.Meter
	case x < 0.3 && s.Meter%2 == 0:
		h.every = s.Meter / 2
	case x < 0.36:
		h.every = 4 * s.Meter
	}
	if r.Chance(0.15) {
		h.early = 1 / float64(s.Steps)
		if s.Steps == 4 {
			h.early = 0.5
		}
	}
	return h
}

// degree is the chord at a position [counts].
func (h harmony) degree(pos float64) int {
	return h.loop[int((pos+h.early+1e-9)/float64(h.every))%len(h.loop)]
}

// note is the MIDI key of a degree of the scale, in the octave above the tonic.
func (h harmony) note(degree int) float64 {
	octave := 0
	for degree < 0 {
		degree += len(h.scale)
		octave--
	}
	return float64(h.key + 12*(octave+degree/len(h.scale)) + h.scale[degree%len(h.scale)])
}
