package ear

// group is how many frames are worked on together. Six sums, of two outputs at
// three frames, and what they multiply are as much as the processor holds in
// registers; with eight, half of the products go through memory.
const group = 3

// rows are the values of so many frames, wherever they lie.
type rows [group][]float32

// newRows makes rows of n values.
func newRows(n int) *rows {
	var r rows
	for k := range r {
		r[k] = make([]float32, n)
	}
	return &r
}

// conv is a dilated convolution over time.
type conv struct {
	taps, in, out, dilation int
	weight                  []float32 // for each output, tap by tap, the inputs
	bias                    []float32
}

// over writes the answers for all frames of in to out.
func (c *conv) over(out, in *sheet) {
	near, answer := newRows(c.taps*c.in), newRows(c.out)
	for t := 0; t < in.frames; t += group {
		c.gather(near, in, t)
		c.apply(answer, near)
		for k := range min(group, in.frames-t) {
			copy(out.row(t+k), answer[k])
		}
	}
}

// gather copies what the answers for the frames from t on depend on to near:
// for each of them, tap by tap, the inputs.
func (c *conv) gather(near *rows, in *sheet, t int) {
	for k, row := range near {
		for tap := range c.taps {
			copy(row[tap*c.in:], in.row(t+k+(tap-c.taps/2)*c.dilation))
		}
	}
}

// apply writes the answers to what was gathered to out.
func (c *conv) apply(out, near *rows) {
	n := c.taps * c.in
	for o := 0; o < c.out; o += 2 {
		p := min(o+1, c.out-1) // of an odd number, the last is done twice
		sum := dot(c.weight[o*n:][:n], c.weight[p*n:][:n], near)
		for k := range group {
			out[k][o] = sum[k] + c.bias[o]
			out[k][p] = sum[group+k] + c.bias[p]
		}
	}
}

// dot is the products of two outputs' weights with three rows.
func dot(w, v []float32, x *rows) [2 * group]float32 {
	v, a, b, c := v[:len(w)], x[0][:len(w)], x[1][:len(w)], x[2][:len(w)]
	var s0, s1, s2, s3, s4, s5 float32
	for i, f := range w {
		g := v[i]
		p, q, r := a[i], b[i], c[i]
		s0 += f * p
		s1 += f * q
		s2 += f * r
		s3 += g * p
		s4 += g * q
		s5 += g * r
	}
	return [2 * group]float32{s0, s1, s2, s3, s4, s5}
}
