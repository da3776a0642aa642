package phrase

import (
	"math"
	"slices"

	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
)

const (
	// shortSpan and longSpan are the stretches over which repetitions are
	// looked at [bars].
	shortSpan, longSpan = 2, 4
	// around is how far to either side of a bar line what plays is summed up
	// [bars].
	around = 4
	// nearby is how far to either side the bars lie that tell what is usual
	// [bars].
	nearby = 8
)

// ClueCount is the number of clues that Clues gives for a bar.
var ClueCount = len(clueNames)

// clueNames say what each clue is, in the order of Clues. Unusual is what
// differs from the median of the bars nearby.
var clueNames = [...]string{
	"count 1 is unusually bright, as under a crash",
	"the counts after it are",
	"count 1 is brighter than the counts before",
	"count 1 is unusually strong in the bass drum",
	"unusually much begins on count 1 in the cymbals",
	"count 1 is unusually loud",
	"the last two counts were a fill: unlike those of the bars before, and of those after",
	"so were the counts after count 1 of the bar before",
	"so were those of the two bars before",
	"the last count before was unusually loud",
	"the bar before was, without its count 1",
	"the low sounds of the bar before were",
	"the bar before grew unusually bright",
	"unusually much began on the last count",
	"unusually much began on the four before",
	"the drums after count 1 differ from those of the bar before",
	"the sound differs between the 4 bars before and after",
	"the sound differs between the 8 bars before and after",
	"it is louder after than before",
	"the chords differ between the 4 bars before and after",
	"the 4 bars before are alike, and the 4 after, but not those with these",
	"the same of 8",
	"repetitions of 2 bars begin or end",
	"they do so more than at the bars beside it",
	"repetitions of 4 bars begin or end",
	"4 bars that come elsewhere, too, begin",
	"4 bars that come elsewhere, too, have ended",
	"the bar is like the one 8 before",
	"the 4 bars are like those 8 before",
	"the chord is that of the first bar: most music sets out from home",
	"the bass note on count 1 is that of the first bar",
	"chords and bass of the 4 bars are those of the first 4",
	"those of the 8 bars are those of the first 8",
	"count 1 is unusually bright beside the counts after it: a crash dies away",
	"the low sounds come back after the bar before",
	"the ear takes count 1 for one unusually surely",
}

// Clues says for each bar, given its first beat, how much speaks for the start
// of a phrase: see clueNames. NaN where a clue cannot be had.
func Clues(s *bar.Sound, starts []int, meter int) [][]float64 {
	r := rowsOf(s, starts, meter)
	b := beatsOf(s, starts, meter)
	like := compare(r, meter)
	short, long, twin := like.repetitionBreaks(shortSpan), like.repetitionBreaks(longSpan), like.twins(longSpan)
	chords, tails := r.chords(), tailsOf(s, starts, meter)
	clues := []func(i int) float64{
		func(i int) float64 { return unusual(b.brightOne, i) },
		func(i int) float64 { return unusual(b.brightRest, i) },
		func(i int) float64 { return b.brightOne[i] - b.brightBefore[i] },
		func(i int) float64 { return unusual(b.kickOne, i) },
		func(i int) float64 { return unusual(b.cymbalOne, i) },
		func(i int) float64 { return unusual(b.loudOne, i) },
		func(i int) float64 { return fill(tails.last, i, 1) },
		func(i int) float64 { return fill(tails.rest, i, 1) },
		func(i int) float64 { return fill(tails.rest, i, 2) },
		func(i int) float64 { return unusual(b.loudLast, i-1) },
		func(i int) float64 { return unusual(b.loudRest, i-1) },
		func(i int) float64 { return unusual(b.lowRest, i-1) },
		func(i int) float64 { return unusual(b.swell, i-1) },
		func(i int) float64 { return unusual(b.onsetLast, i-1) },
		func(i int) float64 { return unusual(b.onsetRest, i-1) },
		func(i int) float64 { return distance(tails.rest[i], tails.rest[i-1]) },
		func(i int) float64 { return turn(r.level, i, around) },
		func(i int) float64 { return turn(r.level, i, nearby) },
		func(i int) float64 { return rise(b.loud, i, around) },
		func(i int) float64 { return 1 - cosine(sides(chords, i)) },
		func(i int) float64 { return like.contrast(i, around) },
		func(i int) float64 { return like.contrast(i, nearby) },
		func(i int) float64 { return short[i] },
		func(i int) float64 { return short[i] - max(at(short, i-1), at(short, i+1)) },
		func(i int) float64 { return long[i] },
		func(i int) float64 { return twin[i] - twin[i-1] },
		func(i int) float64 { return at(twin, i-longSpan) - at(twin, i-longSpan+1) },
		func(i int) float64 { return like.before(i, longest, 1) },
		func(i int) float64 { return like.before(i, longest, longSpan) },
		func(i int) float64 { return cosine(chords[i], chords[0]) },
		func(i int) float64 { return cosine(s.Bass[starts[i]], s.Bass[starts[0]]) },
		func(i int) float64 { return r.likeFirst(i, longSpan) },
		func(i int) float64 { return r.likeFirst(i, longest) },
		func(i int) float64 { return unusual(b.brightFall, i) },
		func(i int) float64 { return b.lowRest[i] - b.lowRest[i-1] },
		func(i int) float64 { return unusual(b.one, i) },
	}
	out := make([][]float64, len(clues))
	for k, clue := range clues {
		out[k] = make([]float64, len(starts))
		for i := range out[k] {
			out[k][i] = math.NaN()
			if i > 0 {
				out[k][i] = clue(i) // the first bar has none before it
			}
		}
	}
	return out
}

// at is x[i], or x's nearest value beyond its ends.
func at(x []float64, i int) float64 { return x[min(len(x)-1, max(0, i))] }

// unusual is by how much x[i] exceeds the median of the values nearby.
func unusual(x []float64, i int) float64 {
	var others []float64
	for j := max(0, i-nearby); j <= min(len(x)-1, i+nearby); j++ {
		if j != i {
			others = append(others, x[j])
		}
	}
	if len(others) == 0 {
		return math.NaN()
	}
	slices.Sort(others)
	return x[i] - (others[(len(others)-1)/2]+others[len(others)/2])/2
}

// sides are the means of the bars before and after a bar line.
func sides(rows [][]float64, i int) (before, after []float64) {
	return dsp.MeanRow(rows[max(0, i-around):i]), dsp.MeanRow(rows[i:min(len(rows), i+around)])
}

// turn is the distance of the medians of the bars before and after a bar line,
// so many of each: a fill or a crash, which lasts one bar, does not count.
func turn(rows [][]float64, i, span int) float64 {
	before, after := rows[max(0, i-span):i], rows[i:min(len(rows), i+span)]
	return distance(middle(before), middle(after))
}

// rise is the same of a level, with its sign.
func rise(x []float64, i, span int) float64 {
	return median(x[i:min(len(x), i+span)]) - median(x[max(0, i-span):i])
}

func median(x []float64) float64 {
	y := slices.Clone(x)
	slices.Sort(y)
	return (y[(len(y)-1)/2] + y[len(y)/2]) / 2
}

// middle is the median of each column.
func middle(rows [][]float64) []float64 {
	out, column := make([]float64, len(rows[0])), make([]float64, len(rows))
	for j := range out {
		for i, row := range rows {
			column[i] = row[j]
		}
		out[j] = median(column)
	}
	return out
}

// fill is how unlike the n bars before a bar line are to those before them, and
// to those after: the lesser of the two.
func fill(rows [][]float64, i, n int) float64 {
	if i < n {
		return math.NaN()
	}
	before, after := rows[max(0, i-n-around):i-n], rows[i:min(len(rows), i+around)]
	return min(unlike(dsp.MeanRow(rows[i-n:i]), before), unlike(dsp.MeanRow(rows[i-n:i]), after))
}

// unlike is the distance of a row from the median of some, not a number where there are none.
func unlike(row []float64, others [][]float64) float64 {
	if len(others) == 0 {
		return math.NaN()
	}
	return distance(row, middle(others))
}
