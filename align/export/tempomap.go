package export

import (
	"math"
	"sort"

	"onphrase/align"
)

// tempoMap is the timeline divided into counts, from 0:00 to the end. Where no
// count is known, even ones fill the time, so that the known ones stay in
// their places.
type tempoMap struct {
	at      []float64 // of every count [s], strictly increasing, the first at 0
	anchors []anchor  // where bars begin afresh, in order, the first at 0
	phrases map[int]string
}

// anchor is a count on which a bar begins, and the counts of the bars from
// there on.
type anchor struct{ count, bar int }

// usualBar is the counts in a bar: two bars make an eight.
const usualBar = 4

// usualPeriod is the time from count to count where there is no music [s].
const usualPeriod = 0.5

// newTempoMap divides the timeline of a count map.
func newTempoMap(m *align.CountMap) *tempoMap {
	t := &tempoMap{at: []float64{0}, anchors: []anchor{{0, usualBar}}, phrases: map[int]string{}}
	for _, u := range uses(m) {
		t.add(u)
	}
	t.fill(m.Length, usualPeriod)
	return t
}

// add goes on with the counts of a track.
func (t *tempoMap) add(u use) {
	period := usualPeriod
	if u.Played > 0 {
		period = 60 / u.Played
	}
	t.fill(u.ClassAt, period)
	t.anchor(t.last(), usualBar)
	if u.Taught == nil {
		return
	}
	counts := u.Taught.Counts
	for len(counts) > 0 && u.classTime(counts[len(counts)-1]) >= u.ends-rounding {
		counts = counts[:len(counts)-1]
	}
	if len(counts) == 0 {
		return
	}
	t.fill(u.classTime(counts[0]), period)
	first, bar := t.last(), usualBar
	if u.Taught.Meter > 0 {
		bar = u.Taught.Meter
	}
	t.anchor(first, bar)
	for _, c := range counts[1:] {
		t.at = append(t.at, u.classTime(c))
	}
	for n, p := range u.Taught.Phrases {
		if p.First < len(counts) {
			t.anchor(first+p.First, bar)
			t.phrases[first+p.First] = phraseWords(n+1, p)
		}
	}
}

func (t *tempoMap) last() int { return len(t.at) - 1 }

// fill goes on to a moment with even counts of about a period. A rest of less
// than half a count goes to the count before it, unless a bar begins there.
func (t *tempoMap) fill(to, period float64) {
	from := t.at[t.last()]
	gap := to - from
	if gap <= rounding {
		return
	}
	n := int(math.Round(gap / period))
	if n == 0 && t.anchors[len(t.anchors)-1].count != t.last() {
		t.at[t.last()] = to
		return
	}
	n = max(n, 1)
	for i := 1; i <= n; i++ {
		t.at = append(t.at, from+gap*float64(i)/float64(n))
	}
}

// anchor lets bars of some counts begin on a count.
func (t *tempoMap) anchor(count, bar int) {
	if last := &t.anchors[len(t.anchors)-1]; last.count == count {
		last.bar = bar
		return
	}
	t.anchors = append(t.anchors, anchor{count, bar})
}

// count is where a moment is, in counts from 0:00 on.
func (t *tempoMap) count(at float64) float64 {
	i := sort.SearchFloat64s(t.at, at+rounding) - 1
	i = max(0, min(i, len(t.at)-2))
	if i+1 >= len(t.at) {
		return 0
	}
	return max(0, float64(i)+(at-t.at[i])/(t.at[i+1]-t.at[i]))
}

// stretch is a run of counts at one tempo.
type stretch struct {
	first  int // count
	micros int // from count to count [µs]
}

// slack is how far a count may be moved to join it to the tempo of its
// neighbours [s]: twice the step to which counts are rounded, and a tenth of
// the error that the checks allow for them.
const slack = 0.002

// stretches lists the tempi: as few as keep every count within the slack of
// its place. Errors do not add up, because every stretch sets out from where
// the one before really ends.
func (t *tempoMap) stretches() []stretch {
	var all []stretch
	at := t.at[0]
	for i := 0; i < t.last(); {
		low, high, end := 0.0, math.Inf(1), i+1
		for j := i + 1; j <= t.last(); j++ {
			n := float64(j - i)
			if slope := (t.at[j] - at) / n; slope >= low && slope <= high {
				end = j
			}
			low, high = max(low, (t.at[j]-slack-at)/n), min(high, (t.at[j]+slack-at)/n)
			if low > high {
				break
			}
		}
		s := stretch{i, max(1, int(math.Round(1e6*(t.at[end]-at)/float64(end-i))))}
		all = append(all, s)
		at += float64(s.micros) / 1e6 * float64(end-i)
		i = end
	}
	return all
}
