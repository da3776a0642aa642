package phrase

import "onphrase/beat/bar"

// Phrase is a run of counts that belong together.
type Phrase struct {
	Beat   int     // index of its first beat
	Counts int     // beats
	Trust  float64 // 0-1, that a phrase starts here, given right bars
	Energy Energy
}

// Find lists the phrases of a track, without gaps, from the first to the last
// whole bar in which the counts can be heard.
func Find(s *bar.Sound, bars bar.Bars) []Phrase {
	starts, end := barStarts(bars)
	first, last := edges(s, starts, bars.Meter)
	if last < len(starts) {
		end = starts[last]
	}
	starts = starts[first:last]
	if len(starts) == 0 {
		return nil
	}
	found := segment(odds(Clues(s, starts, bars.Meter)))
	if len(found.starts) > 1 && found.starts[1] < leastBars {
		found.starts, found.chance = found.starts[1:], found.chance[1:]
	}
	var out []Phrase
	for i, b := range found.starts {
		next := end
		if i+1 < len(found.starts) {
			next = starts[found.starts[i+1]]
		}
		out = append(out, Phrase{Beat: starts[b], Counts: next - starts[b], Trust: found.chance[i]})
	}
	rate(out, s)
	return out
}

// leastBars is the shortest stretch before the first whole phrase that is not
// a mere pick-up: an eight.
const leastBars = 2

// barStarts lists the first beat of each bar, and the beat after the last of
// the bars. A last bar that breaks off, such as a closing hit on count 1, is
// left out.
func barStarts(bars bar.Bars) (starts []int, end int) {
	for i, p := range bars.BeatInBar {
		if p == 1 {
			starts = append(starts, i)
		}
	}
	end = len(bars.BeatInBar)
	if n := len(starts); n > 1 && end-starts[n-1] < bars.Meter {
		end = starts[n-1]
		starts = starts[:n-1]
	}
	return starts, end
}
