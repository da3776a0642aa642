package beat

import (
	"math"

	"onphrase/beat/grid"
)

const (
	// leastStep is the least change of tempo that is told [relative]: less is a
	// cut in the music.
	leastStep = 0.002
	// paceOver is how many counts to either side tell the tempo of one that
	// people play.
	paceOver = 4
)

// tempi are those of the counts of a part: one for each of its lines, and one
// for each count that is on none.
func (p part) tempi() []tempoOf {
	var all []tempoOf
	at := 0
	for _, l := range append(p.Lines[:len(p.Lines):len(p.Lines)], grid.Line{From: len(p.Beats), To: len(p.Beats)}) {
		for ; at < l.From; at++ {
			all = append(all, tempoOf{bpm: p.pace(at), counts: 1})
		}
		if at = l.To; l.To > l.From {
			all = append(all, tempoOf{bpm: 60 / l.Period, counts: l.To - l.From})
		}
	}
	return all
}

// pace is the tempo around a count [1/min].
func (p part) pace(k int) float64 {
	from, to := max(0, k-paceOver), min(len(p.Beats)-1, k+paceOver)
	return 60 * float64(to-from) / (p.Beats[to] - p.Beats[from])
}

// bpmFrom is the tempo from a count on [1/min]: of the line that it is on, or
// the mean of the part.
func (p part) bpmFrom(k int) float64 {
	for _, l := range p.Lines {
		if k >= l.From && k < l.To {
			return 60 / l.Period
		}
	}
	return 60 / p.Period
}

// steps are where the tempo of a part changes at once, after its first counts.
func (p part) steps(first int) []TempoChange {
	var out []TempoChange
	for i, l := range p.Lines {
		if l.Step && l.From > first && math.Abs(math.Log(l.Period/p.Lines[i-1].Period)) >= leastStep {
			out = append(out, TempoChange{Time: p.Beats[l.From], BPM: 60 / l.Period})
		}
	}
	return out
}
