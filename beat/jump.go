package beat

import (
	"cmp"
	"math"
	"slices"

	"onphrase/beat/internal/dsp"
)

const (
	// jumpBy is how unlike its neighbours an interval must be for the counts to jump
	// there, as a share of a count: what people play varies less from count to count.
	jumpBy = 0.15
	// beside is how many intervals to either side tell how long a count lasts, and
	// how many counts around a jump are not to be trusted: a bar.
	beside = 4
	// jumpReach is how far from the beginning of a song the counting may jump for
	// its sake.
	jumpReach = 8
)

// jumps are the counts that come too soon or too late after the one before, where
// the tempo does not change: no song skips a part of a count, so that one of both
// sides is counted wrong, or the music was cut.
func (t *Track) jumps() []int {
	var out []int
	seams := t.seams()
	for i := 1; i < len(t.Beats); i++ {
		before, after := intervals(t.Beats, i-1-beside, i-1), intervals(t.Beats, i, i+beside)
		if len(before) < beside || len(after) < beside || nearAny(seams, i, beside) || t.unsteadyAt(t.Beats[i]) {
			continue
		}
		period := dsp.Median(append(before, after...))
		if math.Abs((t.Beats[i]-t.Beats[i-1])/period-1) > jumpBy {
			out = append(out, i)
		}
	}
	return out
}

// intervals are those between counts from..to [s], as far as there are any.
func intervals(beats []float64, from, to int) []float64 {
	var out []float64
	for k := max(0, from); k < min(to, len(beats)-1); k++ {
		out = append(out, beats[k+1]-beats[k])
	}
	return out
}

// nearAny reports whether one of some indices is within reach of another.
func nearAny(all []int, i, reach int) bool {
	return slices.ContainsFunc(all, func(k int) bool { return k >= i-reach && k <= i+reach })
}

func (t *Track) unsteadyAt(time float64) bool {
	return slices.ContainsFunc(t.Unsteady, func(u [2]float64) bool { return time >= u[0] && time <= u[1] })
}

// doubt names the counts around some as not to be trusted.
func (t *Track) doubt(counts []int) {
	for _, i := range counts {
		from, to := t.Beats[max(0, i-beside)], t.Beats[min(len(t.Beats)-1, i+beside-1)]
		t.Unsteady = append(t.Unsteady, [2]float64{from, to})
	}
	slices.SortFunc(t.Unsteady, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	var out [][2]float64
	for _, u := range t.Unsteady {
		if n := len(out); n > 0 && u[0] <= out[n-1][1] {
			out[n-1][1] = max(out[n-1][1], u[1])
		} else {
			out = append(out, u)
		}
	}
	t.Unsteady = out
}

// longestRun is the share of n counts that lie between two of some places, or
// between one and an end: the most that can be right where all others are wrong.
func longestRun(places []int, n int) float64 {
	longest, from := 0, 0
	for _, i := range append(slices.Clone(places), n) {
		longest, from = max(longest, i-from), i
	}
	return float64(longest) / float64(max(1, n))
}

// union are the indices of both lists, in order.
func union(a, b []int) []int {
	out := append(slices.Clone(a), b...)
	slices.Sort(out)
	return slices.Compact(out)
}
