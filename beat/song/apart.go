package song

import (
	"cmp"
	"math"
	"slices"

	"onphrase/beat/bar"
	"onphrase/beat/internal/dsp"
)

// hear is what each block of beats sounds like: its spectrum, chords, bass notes
// and rhythm, each brought to the same spread over the track.
func hear(s *bar.Sound) [][]float64 {
	n := s.Len() / block
	out := make([][]float64, n)
	for _, x := range []struct {
		rows   [][]float64
		beats  int // that are kept apart
		weight float64
	}{{s.Level, 1, 1}, {s.Chroma, 1, 1}, {s.Bass, 1, 0.7}, {s.Onset, 4, 0.7}} {
		for i, row := range even(inBlocks(x.rows, n, x.beats), x.weight) {
			out[i] = append(out[i], row...)
		}
	}
	return out
}

// inBlocks is the mean of every so-many-th row of each block.
func inBlocks(rows [][]float64, n, every int) [][]float64 {
	out := make([][]float64, n)
	for i := range out {
		own := rows[i*block : (i+1)*block]
		for k := range every {
			var some [][]float64
			for j := k; j < block; j += every {
				some = append(some, own[j])
			}
			out[i] = append(out[i], dsp.MeanRow(some)...)
		}
	}
	return out
}

// even brings rows to mean 0 and the same mean deviation.
func even(rows [][]float64, weight float64) [][]float64 {
	if len(rows) == 0 {
		return rows
	}
	m := dsp.MeanRow(rows)
	square := make([]float64, len(m))
	for _, row := range rows {
		for j, v := range row {
			square[j] += (v - m[j]) * (v - m[j]) / float64(len(rows))
		}
	}
	deviation := 1e-9
	for _, v := range square {
		deviation += math.Sqrt(v) / float64(len(m))
	}
	scale := weight / deviation / math.Sqrt(float64(len(m)))
	for i, row := range rows {
		out := make([]float64, len(row))
		for j, v := range row {
			out[j] = (v - m[j]) * scale
		}
		rows[i] = out
	}
	return rows
}

// The log-odds that another song begins: a constant, and what the two clues add.
// Fitted to 50 places in single songs, rendered and produced, where most speaks
// for another one, and to 120 at which two such songs were joined.
const (
	always  = -2.3
	ofSides = 1.65
	ofKey   = -1.8
	surest  = 0.99 // of a clue, beyond which nothing is told
)

// odds says for each block how much speaks for another song to begin with it
// [log-odds]; near the ends of the track nothing does.
func odds(s *bar.Sound) []float64 {
	blocks := hear(s)
	near := distances(blocks)
	out := make([]float64, len(blocks))
	for b := range out {
		out[b] = math.Inf(-1)
		if b < shortestAtSeam || b+shortestAtSeam > len(blocks) {
			continue
		}
		from, to := max(0, b-reach), min(len(blocks), b+reach)
		sides := min(surest, max(-surest, apart(near, from, b, to)))
		key := min(surest, max(-surest, alike(s.Chroma[from*block:b*block], s.Chroma[b*block:to*block])))
		out[b] = always + ofSides*2*math.Atanh(sides) + ofKey*math.Atanh(key)
	}
	return out
}

// distances are those of each block to the ones after it, as far as they are
// compared.
func distances(blocks [][]float64) [][]float64 {
	out := make([][]float64, len(blocks))
	for i := range out {
		for j := i; j < min(len(blocks), i+2*reach); j++ {
			sum := 0.0
			for k, v := range blocks[i] {
				d := v - blocks[j][k]
				sum += d * d
			}
			out[i] = append(out[i], sum)
		}
	}
	return out
}

// apart says how far blocks from..b-1 and b..to-1 keep to themselves: of those
// that are most like each block, how many lie on its own side, 0 for as many as
// by chance and 1 for all of them.
//
// Ref: Schilling 1986, "Multivariate two-sample tests based on nearest neighbors"
// (JASA 81; from memory); blocks next to each other, which are alike in any music,
// do not count.
func apart(near [][]float64, from, b, to int) float64 {
	sum := 0.0
	for i := from; i < to; i++ {
		sum += keeps(near, i, from, b, to)
	}
	return sum / float64(to-from)
}

// other is a block as another one sees it.
type other struct {
	distance float64
	own      bool // on the same side
}

// keeps is how far block i keeps to its own side of b among blocks from..to-1.
func keeps(near [][]float64, i, from, b, to int) float64 {
	var others []other
	own := 0.0
	for j := from; j < to; j++ {
		if max(i-j, j-i) < neighbor {
			continue
		}
		o := other{near[min(i, j)][max(i-j, j-i)], (i < b) == (j < b)}
		if o.own {
			own++
		}
		others = append(others, o)
	}
	slices.SortStableFunc(others, func(a, b other) int { return cmp.Compare(a.distance, b.distance) })
	chance, same := own/float64(len(others)), 0.0
	for _, o := range others[:closest] {
		if o.own {
			same += 1. / closest
		}
	}
	return (same - chance) / (1 - chance)
}

// alike is the correlation of the pitch classes of two stretches, -1 to 1: songs
// keep to a key.
func alike(a, b [][]float64) float64 {
	x, y := dsp.MeanRow(a), dsp.MeanRow(b)
	var mx, my float64
	for i := range x {
		mx, my = mx+x[i]/float64(len(x)), my+y[i]/float64(len(y))
	}
	var xy, xx, yy float64
	for i := range x {
		dx, dy := x[i]-mx, y[i]-my
		xy, xx, yy = xy+dx*dy, xx+dx*dx, yy+dy*dy
	}
	if xx == 0 || yy == 0 {
		return 0
	}
	return xy / math.Sqrt(xx*yy)
}
