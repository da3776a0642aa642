package phrase

import (
	"math"

	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
	"onphrase/beat/tone"
)

// barRows is what each bar sounds like, one row a bar.
type barRows struct {
	chroma, bass [][]float64 // of its beats, one after the other
	rhythm       [][]float64 // onsets of its beats, one after the other
	onset        [][]float64 // mean onsets of a beat
	level        [][]float64 // mean level of each band
}

// rowsOf collects the bars that begin at the given beats. A bar is heard for
// meter beats, also where the next one comes early.
func rowsOf(s *bar.Sound, starts []int, meter int) *barRows {
	r := &barRows{}
	for _, start := range starts {
		end := min(s.Len(), start+meter)
		r.chroma = append(r.chroma, join(s.Chroma[start:end], meter))
		r.bass = append(r.bass, join(s.Bass[start:end], meter))
		r.rhythm = append(r.rhythm, join(s.Onset[start:end], meter))
		r.onset = append(r.onset, dsp.MeanRow(s.Onset[start:end]))
		r.level = append(r.level, dsp.MeanRow(s.Level[start:end]))
	}
	return r
}

// join puts rows one after the other; the last stands in for those missing.
func join(rows [][]float64, n int) []float64 {
	var out []float64
	for i := range n {
		out = append(out, rows[min(i, len(rows)-1)]...)
	}
	return out
}

// distance is the root of the mean squared difference.
func distance(a, b []float64) float64 { return math.Sqrt(meanSquare(a, b)) }

func meanSquare(a, b []float64) float64 {
	if len(a) == 0 {
		return 0
	}
	sum := 0.0
	for i := range a {
		sum += (a[i] - b[i]) * (a[i] - b[i])
	}
	return sum / float64(len(a))
}

// chords are the pitch classes of each bar, its beats together.
func (r *barRows) chords() [][]float64 {
	out := make([][]float64, len(r.chroma))
	for i, row := range r.chroma {
		out[i] = make([]float64, tone.Classes)
		for j, v := range row {
			out[i][j%tone.Classes] += v
		}
	}
	return out
}

// likeFirst is how like chords and bass of some bars are to those of as many at
// the start of the track, -1 to 1: not a number where they are the same bars.
func (r *barRows) likeFirst(i, span int) float64 {
	n := min(span, len(r.chroma)-i)
	if i < n || n < 1 {
		return math.NaN()
	}
	sum := 0.0
	for k := range n {
		sum += cosine(r.chroma[i+k], r.chroma[k]) + cosine(r.bass[i+k], r.bass[k])
	}
	return sum / float64(2*n)
}

// cosine is that of the angle between a and b, 1 where either is nothing.
func cosine(a, b []float64) float64 {
	ab, aa, bb := 0.0, 0.0, 0.0
	for i := range a {
		ab += a[i] * b[i]
		aa += a[i] * a[i]
		bb += b[i] * b[i]
	}
	if aa*bb == 0 {
		return 1
	}
	return ab / math.Sqrt(aa*bb)
}
