package phrase

import "math"

// reach is how far apart two bars may be to count as a repetition [bars]:
// about four minutes at 120 counts a minute. It bounds time and memory on
// hours of music, and keeps the songs of a mix apart.
const reach = 128

// similarity compares each bar with those up to reach before and after it.
type similarity struct {
	bars int
	cell []float64 // (2·reach + 1) values a bar, -1 to 1, by lag
}

// at is the likeness of bars i and j, no more than reach apart.
func (s *similarity) at(i, j int) float64 { return s.cell[i*(2*reach+1)+j-i+reach] }

// compare likens the bars in harmony, bass, rhythm and sound, the four with
// equal weight.
func compare(r *barRows, meter int) *similarity {
	s := &similarity{bars: len(r.level), cell: make([]float64, len(r.level)*(2*reach+1))}
	for _, rows := range [][][]float64{r.rhythm, r.level} {
		s.addNearness(rows)
	}
	for _, rows := range [][][]float64{r.chroma, r.bass} {
		s.addCosine(rows, float64(meter))
	}
	return s
}

func (s *similarity) each(f func(i, j int) float64) {
	for i := range s.bars {
		for j := max(0, i-reach); j <= min(s.bars-1, i+reach); j++ {
			s.cell[i*(2*reach+1)+j-i+reach] += f(i, j) / 4
		}
	}
}

// addCosine adds the mean cosine of the unit vectors that each row consists of.
func (s *similarity) addCosine(rows [][]float64, vectors float64) {
	s.each(func(i, j int) float64 {
		sum := 0.0
		for k, v := range rows[i] {
			sum += v * rows[j][k]
		}
		return sum / vectors
	})
}

// addNearness adds exp(-d²/σ²), σ² being the mean of the squared distances d²
// of this track.
func (s *similarity) addNearness(rows [][]float64) {
	sum, n := 0.0, 0.0
	for i := range rows {
		for j := max(0, i-reach); j <= i; j++ {
			sum += meanSquare(rows[i], rows[j])
			n++
		}
	}
	if sum == 0 {
		s.each(func(i, j int) float64 { return 1 })
		return
	}
	s.each(func(i, j int) float64 { return math.Exp(-meanSquare(rows[i], rows[j]) * n / sum) })
}

// repetitionBreaks says for each bar how much the repetitions change there:
// the root mean square, over all other places of the track, of how much
// better the span bars from here on match what follows that place than the
// span bars before match what precedes it. Near the ends span shrinks.
//
// A chorus that comes back starts and ends such a match at its first and last
// bar, whatever changes within it.
//
// Ref: Serrà, Müller, Grosche & Arcos 2014, "Unsupervised music structure
// annotation by time series structure features and segment similarity"
// (novelty of the lag matrix); ours takes differences of means instead of a
// Gaussian filter.
func (s *similarity) repetitionBreaks(span int) []float64 {
	out := make([]float64, s.bars)
	for i := 1; i < s.bars; i++ {
		n := min(span, i, s.bars-i)
		sum, count := 0.0, 0.0
		for j := max(n, i-reach); j <= min(s.bars-n, i+reach); j++ {
			if j > i-n && j < i+n {
				continue // a bar always matches itself
			}
			d := 0.0
			for k := range n {
				d += s.at(i+k, j+k) - s.at(i-1-k, j-1-k)
			}
			sum += d * d / float64(n*n)
			count++
		}
		if count > 0 {
			out[i] = math.Sqrt(sum / count)
		}
	}
	return out
}

// before is how like some bars are to those a lag before them, not a number
// where there are none.
func (s *similarity) before(i, lag, span int) float64 {
	if i < lag {
		return math.NaN()
	}
	sum, n := 0.0, min(span, s.bars-i)
	for k := range n {
		sum += s.at(i+k, i+k-lag)
	}
	return sum / float64(n)
}

// contrast is how much more alike the bars on each side of a bar line are than
// those of one side and the other, up to span bars away.
//
// Ref: Foote 2000, "Automatic audio segmentation using a measure of audio
// novelty" (checkerboard kernel; from memory).
func (s *similarity) contrast(i, span int) float64 {
	var sum, n [2]float64 // within a side, across
	for a := max(0, i-span); a < min(s.bars, i+span); a++ {
		for b := max(0, i-span); b < a; b++ {
			k := 0
			if a >= i && b < i {
				k = 1
			}
			sum[k] += s.at(a, b)
			n[k]++
		}
	}
	if n[0] == 0 || n[1] == 0 {
		return math.NaN()
	}
	return sum[0]/n[0] - sum[1]/n[1]
}

// twins says for the span bars from each bar on how alike the likest span bars
// are that share none with them; not a number where the track ends before.
func (s *similarity) twins(span int) []float64 {
	out := make([]float64, s.bars)
	for i := range out {
		if i+span > s.bars {
			out[i] = math.NaN()
			continue
		}
		for j := max(0, i-reach); j <= min(s.bars-span, i+reach); j++ {
			if j > i-span && j < i+span {
				continue
			}
			sum := 0.0
			for k := range span {
				sum += s.at(i+k, j+k)
			}
			out[i] = max(out[i], sum/float64(span))
		}
	}
	return out
}
