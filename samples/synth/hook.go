package synth

import "math/rand/v2"

// hook is the melody of a song: two bars that come back changed, as
// statement, answer, statement, ending.
type hook struct {
	statement, answer, ending []hit
}

// hit is a note of the hook.
type hit struct {
	step   int // 16ths from the start of the two bars
	length int // [16ths]
	tone   int // step of the scale, 0 the tonic in octave 5
}

// hookRhythms are where the notes of two bars fall.
var hookRhythms = []string{
	"x..x..x...x...x.x..x..x.....x...",
	"x.x...x.x...x...x.x...x...x.....",
	"..x.x.x...x.x.....x.x.x...x.x.x.",
	"x...x.x..x..x...x...x.x.........",
	"x.....x.x.....x.x...x...x...x.x.",
	"x..x....x..x....x..x..x..x..x...",
}

// pentatonic are the steps of the scale that suit every chord of it.
var pentatonic = map[bool][]int{false: {0, 1, 2, 4, 5}, true: {0, 2, 3, 4, 6}}

// newHook invents a melody.
func newHook(minor bool, rng *rand.Rand) hook {
	rhythm := hookRhythms[rng.IntN(len(hookRhythms))]
	place := 2 + rng.IntN(4) // on the ladder of pentatonic tones
	var h hook
	for i, c := range rhythm {
		if c != 'x' {
			continue
		}
		place = max(0, min(9, place+leap(rng)))
		h.statement = append(h.statement, hit{step: i, length: gap(rhythm, i), tone: rung(minor, place)})
	}
	h.answer = turned(h.statement, minor, place, rng)
	h.ending = closed(h.statement)
	return h
}

// leap is the way from one tone to the next: mostly a step, seldom a jump.
func leap(rng *rand.Rand) int {
	steps := [...]int{-1, 1, -1, 1, 0, 2, -2, 1, -1, 3}
	return steps[rng.IntN(len(steps))]
}

// rung is a tone of the pentatonic ladder as a step of the scale.
func rung(minor bool, place int) int {
	five := pentatonic[minor]
	return five[place%5] + 7*(place/5)
}

// gap is how long a note may last: until the next, but no more than a count.
func gap(rhythm string, i int) int {
	n := 1
	for i+n < len(rhythm) && rhythm[i+n] == '.' && n < 4 {
		n++
	}
	return n
}

// turned is a statement whose second bar goes another way.
func turned(hits []hit, minor bool, place int, rng *rand.Rand) []hit {
	out := append([]hit(nil), hits...)
	for i := range out {
		if out[i].step >= 16 {
			place = max(0, min(9, place+leap(rng)))
			out[i].tone = rung(minor, place)
		}
	}
	return out
}

// closed is a statement that comes home: it ends on a long tonic.
func closed(hits []hit) []hit {
	var out []hit
	for _, h := range hits {
		if h.step < 20 {
			out = append(out, h)
		}
	}
	last := &out[len(out)-1]
	last.tone, last.length = 0, 8
	return out
}

// bars is what two bars of the hook play, by their place in the phrase.
func (h hook) bars(pair int) []hit {
	switch pair % 4 {
	case 1:
		return h.answer
	case 3:
		return h.ending
	}
	return h.statement
}
