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
	right, wrong := 0.0, 0.0
	for _, v := range Starts(reference, estimated, beats) {
		switch v {
		case Right:
			right++
		case Wrong:
			wrong++
		}
	}
	if right == 0 {
		return Match{}
	}
	m := Match{Precision: right / (right + wrong), Recall: right / float64(len(reference))}
	m.F = 2 * m.Precision * m.Recall / (m.Precision + m.Recall)
	return m
}

// Verdict says whether an estimated start is right.
type Verdict int

// The verdicts. A start on a multiple of 32 within a longer section is Spare.
const (
	Wrong Verdict = iota
	Right
	Spare
)

// Starts judges every estimated start as Phrases does. A start of the
// reference is met once.
func Starts(reference, estimated []Section, beats []float64) []Verdict {
	out := make([]Verdict, len(estimated))
	if len(reference) == 0 || len(beats) < 2 {
		return out
	}
	near := func(a, b float64) bool { return math.Abs(a-b) <= halfCount(beats, nearest(beats, a)) }
	for _, s := range reference {
		i := slices.IndexFunc(estimated, func(e Section) bool { return near(s.Time, e.Time) })
		if i >= 0 {
			out[i] = Right
		}
		for n := wholePhrase; n < s.Counts; n += wholePhrase {
			b := nearest(beats, s.Time) + n
			for i, e := range estimated {
				if b < len(beats) && near(beats[b], e.Time) && out[i] == Wrong {
					out[i] = Spare
				}
			}
		}
	}
	return out
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
