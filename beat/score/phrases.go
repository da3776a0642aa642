package score

import (
	"math"
	"slices"
)

// Section is one phrase of a reference or an estimate.
type Section struct {
	Time   float64 // of its count 1 [s]
	Counts int
}

// Match says how well a list of events agrees with a reference, 0-1.
type Match struct {
	F, Precision, Recall float64
}

// Count1 compares estimated times of count 1 with the reference, within 70 ms
// and from Trim on.
func Count1(reference, estimated []float64) float64 {
	return FMeasure(trim(reference), trim(estimated), window)
}

// wholePhrase is the length at which a long section may be parted [counts].
const wholePhrase = 32

// Phrases compares the starts of estimated phrases with the reference: a
// start is right within half a count. Inside a reference section of more than
// 32 counts, starts on a multiple of 32 count neither for nor against: two
// phrases are as good a reading as one long one. beats are the times of the
// reference counts [s].
func Phrases(reference, estimated []Section, beats []float64) Match {
	if len(reference) == 0 || len(estimated) == 0 || len(beats) < 2 {
		return Match{}
	}
	var optional []float64
	for _, s := range reference {
		for n := wholePhrase; n < s.Counts; n += wholePhrase {
			if i := nearest(beats, s.Time) + n; i < len(beats) {
				optional = append(optional, beats[i])
			}
		}
	}
	var times []float64
	for _, s := range estimated {
		i := nearest(beats, s.Time)
		if len(optional) > 0 && math.Abs(optional[nearest(optional, s.Time)]-s.Time) <= halfCount(beats, i) {
			continue
		}
		times = append(times, s.Time)
	}
	hits := 0.0
	for _, s := range reference {
		tolerance := halfCount(beats, nearest(beats, s.Time))
		i := slices.IndexFunc(times, func(t float64) bool { return math.Abs(t-s.Time) <= tolerance })
		if i >= 0 {
			hits++
			times[i] = math.Inf(1) // each is used once
		}
	}
	if hits == 0 {
		return Match{}
	}
	m := Match{Precision: hits / float64(len(times)), Recall: hits / float64(len(reference))}
	m.F = 2 * m.Precision * m.Recall / (m.Precision + m.Recall)
	return m
}

func halfCount(beats []float64, i int) float64 {
	i = min(max(i, 1), len(beats)-1)
	return (beats[i] - beats[i-1]) / 2
}

// OddCase is one odd phrase of a reference and what was found there.
type OddCase struct {
	Time   float64 // of its count 1 [s]
	Counts int
	Found  int // counts of the phrase found to start there, 0 when none does
}

// Right reports whether the phrase was found with its length.
func (c OddCase) Right() bool { return c.Found == c.Counts }

// OddPhrases lists the odd phrases inside a reference, tags and bridges: those
// neither first nor last whose length is no multiple of the commonest one.
func OddPhrases(reference, estimated []Section, beats []float64) []OddCase {
	usual := commonest(reference)
	var out []OddCase
	for i := 1; i+1 < len(reference); i++ {
		s := reference[i]
		if s.Counts%usual == 0 {
			continue
		}
		c := OddCase{Time: s.Time, Counts: s.Counts}
		tolerance := halfCount(beats, nearest(beats, s.Time))
		for _, e := range estimated {
			if math.Abs(e.Time-s.Time) <= tolerance {
				c.Found = e.Counts
			}
		}
		out = append(out, c)
	}
	return out
}

func commonest(sections []Section) int {
	times, best := map[int]int{}, 0
	for _, s := range sections {
		times[s.Counts]++
		if n := times[s.Counts]; n > times[best] || n == times[best] && s.Counts > best {
			best = s.Counts
		}
	}
	return best
}
