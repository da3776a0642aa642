package dsp

import "slices"

// Decimator lowers the sample rate of interleaved sound by a whole number, as
// it streams, with a windowed sinc. The filter is centred: times do not move.
//
// The sound is parted into as many rows as the rate is divided by, so that what
// neighbouring samples need lies side by side, and all of them, of all
// channels, go through the filter together.
type Decimator struct {
	by, zeros, channels int
	middle              float64
	pairs               []pair
	// row r: the samples r, r+by, r+2·by ... of the sound, from those that the next output needs on
	rows       [][]float64
	read, made int // samples per channel, so far
}

// pair is the weight of two samples, one as far before the middle of a
// symmetric filter as the other is behind it.
type pair struct {
	weight        float64
	before, after place
}

// place is where a sample stands in the rows: the next output's own in the first,
// behind so many others as the sinc has zeros.
type place struct{ row, column int }

// NewDecimator divides the rate by a number. zeros, a multiple of 4, is how many
// times the sinc crosses zero on either side: it falls by 70 dB between
// 1 - 2.2/zeros and 1 + 2.2/zeros of the output's Nyquist frequency.
//
// Ref: Kaiser 1974, "Nonrecursive digital filter design using the I0-sinh
// window function", for the length of the filter (formula from memory).
func NewDecimator(by, zeros, channels int) *Decimator {
	if zeros%atOnce != 0 {
		panic("dsp: the zero crossings of a decimator must be a multiple of 4")
	}
	d := &Decimator{by: by, zeros: zeros, channels: channels, rows: make([][]float64, by)}
	half := zeros * by
	filter := sincFilter(0, 1/float64(by), half)
	d.middle = filter[half-1]
	for i := 1; i < half; i++ {
		if i%by != 0 { // there the sinc is zero
			d.pairs = append(d.pairs, pair{filter[half-1+i], d.place(-i), d.place(i)})
		}
	}
	for r := range d.rows {
		d.rows[r] = make([]float64, zeros*channels) // silence before the first sample
	}
	return d
}

// place is that of the sample so far from the next output's own.
func (d *Decimator) place(away int) place {
	at := d.zeros*d.by + away
	return place{row: at % d.by, column: at / d.by}
}

// Write takes interleaved samples and appends what can be computed from them
// to dst.
func (d *Decimator) Write(dst, samples []float64) []float64 { return decimate(d, dst, samples) }

// Flush appends the samples that were waiting for what comes after the end.
func (d *Decimator) Flush(dst []float64) []float64 {
	want := (d.read + d.by - 1) / d.by
	dst = d.Write(dst, make([]float64, 2*d.zeros*d.by*d.channels))
	if extra := d.made - want; extra > 0 {
		dst = dst[:len(dst)-extra*d.channels]
	}
	return dst
}

func decimate[T float32 | float64](d *Decimator, dst []float64, samples []T) []float64 {
	deal(d, samples)
	n := len(d.rows[d.by-1])/d.channels - 2*d.zeros + 1
	if n <= 0 {
		return dst
	}
	from := len(dst)
	dst = slices.Grow(dst, n*d.channels)[:from+n*d.channels]
	d.filter(dst[from:])
	d.made += n
	for r, row := range d.rows {
		d.rows[r] = row[:copy(row, row[n*d.channels:])]
	}
	return dst
}

// deal parts samples into the rows.
func deal[T float32 | float64](d *Decimator, samples []T) {
	for r := range d.by {
		row := d.rows[(d.read+r)%d.by]
		for i := r * d.channels; i < len(samples); i += d.by * d.channels {
			row = append(row, float64(samples[i]))
			if d.channels == 2 {
				row = append(row, float64(samples[i+1]))
			}
		}
		d.rows[(d.read+r)%d.by] = row
	}
	d.read += len(samples) / d.channels
}

// filter computes the next outputs.
func (d *Decimator) filter(out []float64) {
	for i, v := range d.rows[0][d.zeros*d.channels:][:len(out)] {
		out[i] = d.middle * v
	}
	at := func(p place) []float64 { return d.rows[p.row][p.column*d.channels:][:len(out)] }
	for p := range slices.Chunk(d.pairs, atOnce) {
		weight, before, after := [atOnce]float64{}, [atOnce][]float64{}, [atOnce][]float64{}
		for i := range p {
			weight[i], before[i], after[i] = p[i].weight, at(p[i].before), at(p[i].after)
		}
		addPairs(out, &weight, &before, &after)
	}
}

// atOnce is how many pairs are added to the outputs at a time: as many as the
// processor has room for.
const atOnce = 4

func addPairs(out []float64, w *[atOnce]float64, before, after *[atOnce][]float64) {
	n := len(out)
	a, b, c, d := before[0][:n], before[1][:n], before[2][:n], before[3][:n]
	e, f, g, h := after[0][:n], after[1][:n], after[2][:n], after[3][:n]
	s, t, u, v := w[0], w[1], w[2], w[3]
	for i := range out {
		out[i] += s*(a[i]+e[i]) + t*(b[i]+f[i]) + u*(c[i]+g[i]) + v*(d[i]+h[i])
	}
}
