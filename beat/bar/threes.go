package bar

import "math"

// meterClue is a clue of bars of three: where it speaks for neither, and how much
// each unit more speaks for three [log-odds].
type meterClue struct{ undecided, weight float64 }

// meterClues are those of threesClues, in their order: a logistic model. Fitted
// to 264 tracks, 70 of them in three: rendered by three makers, synthesised and with
// two soundfonts, and produced songs in four whose licence allows it.
var meterClues = [...]meterClue{{-0.84, 0.26}, {-0.20, 1.31}, {0.11, 2.35}, {0.05, 3.65}, {0.07, 2.06}}

// threes is how much speaks for bars of three against bars of four [log-odds].
func threes(evidence []float64, s *Sound) float64 {
	sum := 0.0
	for k, x := range threesClues(evidence, s) {
		if !math.IsNaN(x) {
			sum += meterClues[k].weight * (x - meterClues[k].undecided)
		}
	}
	return sum
}

// threesClues are what tells three from four, each NaN where nothing is known:
//
//	0  how much better a count of three fits the evidence than one of four [standard errors]
//	1  how much more the ear hears on every third beat than on every fourth, each on its best phase [log-odds a beat]
//	2  how much more alike beats begin after one, two and three bars of three
//	   than after one and two of four (correlation)

// 3  the same of what sounds: chords and bass notes
// 4  the same of the spectrum
func threesClues(evidence []float64, s *Sound) [len(meterClues)]float64 {
	none := math.NaN()
	clues := [len(meterClues)]float64{combFit(evidence, threeFour) - combFit(evidence, fourFour), none, none, none, none}
	if len(s.One) > 0 {
		clues[1] = heardEvery(s.One, threeFour) - heardEvery(s.One, fourFour)
	}
	for k, rows := range [][][]float64{s.Onset, beside(s.Chroma, s.Bass), s.Level} {
		if len(rows) > 0 {
			clues[2+k] = repeatsInThrees(rows)
		}
	}
	return clues
}

// mostSure is the probability beyond which the ear is not believed more.
const mostSure = 0.98

// heardEvery adds up the log-odds of a count 1 on every n-th beat, on the best
// phase, a beat of all.
func heardEvery(one []float64, n int) float64 {
	sum := make([]float64, n)
	for i, p := range one {
		p = min(mostSure, max(1-mostSure, p))
		sum[i%n] += math.Log(p/(1-p)) / float64(len(one))
	}
	return sum[argmax(sum)]
}

func beside(a, b [][]float64) [][]float64 {
	out := make([][]float64, len(a))
	for i := range a {
		out[i] = append(append(out[i], a[i]...), b[i]...)
	}
	return out
}

// repeatsInThrees is how much more alike rows are after 3, 6 and 9 beats than
// after 4 and 8: 12 are whole bars of both.
func repeatsInThrees(rows [][]float64) float64 {
	x := centred(rows)
	return (alike(x, 3)+alike(x, 6)+alike(x, 9))/3 - (alike(x, 4)+alike(x, 8))/2
}

func centred(rows [][]float64) [][]float64 {
	mean := total(rows)
	out := make([][]float64, len(rows))
	for i, row := range rows {
		for j, v := range row {
			out[i] = append(out[i], v-mean[j]/float64(len(rows)))
		}
	}
	return out
}

// alike is the correlation of rows that lie some beats apart, -1 to 1.
func alike(x [][]float64, beats int) float64 {
	if beats >= len(x) {
		return 0
	}
	both, all := 0.0, 0.0
	for i, row := range x {
		all += dot(row, row)
		if i >= beats {
			both += dot(row, x[i-beats])
		}
	}
	if all == 0 {
		return 0
	}
	return both / all * float64(len(x)) / float64(len(x)-beats)
}
