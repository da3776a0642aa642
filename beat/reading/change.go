package reading

import "math"

var (
	// spans are how many beats are compared before and after a place.
	spans = []int{1, 2, 4}
	// recurs are the beats after which a change may recur.
	recurs = []int{2, 3, 4, 8}
)

// leastChange is a change that means nothing. With less, the noise in bare clicks
// decided how they are counted.
const leastChange = 0.05

// changeClues say where what goes on sounding changes: chords, bass notes and
// the colour of the sound stay for a count or several and change on one, even
// where every drum is off the beat. For each course and span: the change on each
// of places relative to all [log-units], and how regularly that on the beat
// recurs. times are those of placesOf.
//
// Ref: Goto 2001, "An audio-based real-time beat tracking system for music with
// or without drum-sounds" (chords change on beats, and more of them on some);
// ours compares all readings by it.
func changeClues(times [][]float64, courses []Course) Clues {
	var c Clues
	for _, course := range courses {
		var until [][]float64
		for _, at := range times {
			until = append(until, course.until(at))
		}
		for _, span := range spans {
			var on, change []float64
			for place := range places {
				x := course.changes(until[place], span)
				if place == onPlace {
					on = x
				}
				change = append(change, leastChange+mean(x))
			}
			for _, v := range change {
				c = append(c, math.Log(v/mean(change)))
			}
			for _, every := range recurs {
				c = append(c, turn(on, every))
			}
		}
	}
	return c
}

// sameLevel is how far a period may be from a level to be at it, as a standard
// deviation [octaves].
const sameLevel = 0.05

// levelClues say which of levels a period is at, 0-1 each, ratio being that to
// the period at which the music repeats itself most clearly.
func levelClues(ratio float64) Clues {
	c := make(Clues, len(levels))
	for i, level := range levels {
		d := math.Log2(ratio/level) / sameLevel
		c[i] = math.Exp(-d * d / 2)
	}
	return c
}
