package phrase

import "onphrase/beat/bar"

// Phrase is a run of counts that belong together.
type Phrase struct {
	Beat   int     // index of its first beat
	Counts int     // beats
	Trust  float64 // 0-1, that a phrase starts here, given right bars
	Energy Energy
	Signs  Signs // what the trust is told from
}

// leastBars is the shortest stretch before the first whole phrase that is not
// a mere pick-up: an eight.
const leastBars = 2

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
	starts, meter := inFours(s, starts, bars.Meter)
	broken := bars.BeatInBar[starts[0]] != 1
	odds := odds(Clues(s, starts, meter))
	found := segment(odds, broken)
	if len(found.starts) > 1 && found.starts[1] < leastBars {
		found.starts = found.starts[1:]
	}
	signs := signsOf(found.starts, odds, found.chance)
	var out []Phrase
	for i, b := range found.starts {
		next := end
		if i+1 < len(found.starts) {
			next = starts[found.starts[i+1]]
		}
		from := starts[b]
		for from < next && bars.BeatInBar[from] != 1 {
			from++ // the count 1 of a broken first bar was not heard
		}
		if from < next {
			out = append(out, Phrase{Beat: from, Counts: next - from, Trust: signs[i].trust(), Signs: signs[i]})
		}
	}
	rate(out, s)
	return out
}

// inFours gives the bars that phrases are made of, and their counts. Bars of
// two are taken in pairs, since she counts on to eight over them: of the two
// ways to pair them, the one that sounds more like bars of four.
func inFours(s *bar.Sound, starts []int, meter int) (bars []int, counts int) {
	if meter > 2 || len(starts) < 2 {
		return starts, meter
	}
	var pairs [2][]int
	var sum [2]float64
	evidence := bar.Evidence(s)
	for i, start := range starts {
		pairs[i%2] = append(pairs[i%2], start)
		sum[i%2] += evidence[start]
	}
	better := 0
	if sum[1]/float64(len(pairs[1])) > sum[0]/float64(len(pairs[0])) {
		better = 1
	}
	return pairs[better], 2 * meter
}

// barStarts lists the first beat of each bar, and the beat after the last of
// the bars. Up to half a bar before the first count 1 is a pick-up; more may
// also be a bar whose beginning is missing, and is listed. A last bar that breaks
// off, such as a closing hit on count 1, is left out.
func barStarts(bars bar.Bars) (starts []int, end int) {
	for i, p := range bars.BeatInBar {
		if p == 1 {
			if len(starts) == 0 && i > 0 && 2*i > bars.Meter {
				starts = append(starts, 0)
			}
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
