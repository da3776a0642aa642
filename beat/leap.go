package beat

import (
	"cmp"
	"math"
	"slices"

	"onphrase/beat/internal/dsp"
)

const (
	leapOver = 8   // intervals on either side that must keep to one tempo each
	leastGap = 0.1 // by which these differ at least, and none from its own by more [log-units]
)

// addLeaps lists where the counts go on at quite another tempo, and no seam or
// step says so yet: within one stretch, music may be counted at half tempo first.
func (t *Track) addLeaps() {
	listed := t.seams()
	for i := leapOver; i+leapOver < len(t.Beats); i++ {
		before, steadyBefore := steadyInterval(t.Beats[i-leapOver : i+1])
		after, steadyAfter := steadyInterval(t.Beats[i : i+leapOver+1])
		if !steadyBefore || !steadyAfter || math.Abs(math.Log(after/before)) < leastGap || nearAny(listed, i, leapOver) {
			continue
		}
		t.TempoChanges = append(t.TempoChanges, TempoChange{Time: t.Beats[i], BPM: 60 / after})
		listed = append(listed, i)
	}
	slices.SortFunc(t.TempoChanges, func(a, b TempoChange) int { return cmp.Compare(a.Time, b.Time) })
}

// steadyInterval is the median interval of some counts [s], and whether all keep
// to it.
func steadyInterval(beats []float64) (period float64, steady bool) {
	all := intervals(beats, 0, len(beats))
	period = dsp.Median(all)
	for _, d := range all {
		if math.Abs(math.Log(d/period)) > leastGap {
			return period, false
		}
	}
	return period, true
}
