package ear

// group is how many frames are worked on together.
const group = 4

// conv is a dilated convolution over time.
type conv struct {
	taps, in, out, dilation int
	weight                  []float32 // for each output, tap by tap, the inputs
	bias                    []float32
}

// over writes the answers for all frames of in to out.
func (c *conv) over(out, in *sheet) {
	var scratch, rows [group][]float32
	for k := range group {
		scratch[k] = make([]float32, c.out)
	}
	for t := 0; t < in.frames; t += group {
		for k := range group {
			if rows[k] = scratch[k]; t+k < in.frames {
				rows[k] = out.row(t + k)
			}
		}
		c.at(in, t, &rows)
	}
}

// at writes the answers for the frames t..t+3 to out.
func (c *conv) at(in *sheet, t int, out *[group][]float32) {
	for o := 0; o < c.out; o += 2 {
		p := min(o+1, c.out-1) // of an odd number, the last is done twice
		sum := [2 * group]float32{}
		for tap := range c.taps {
			u := t + (tap-c.taps/2)*c.dilation
			from := tap * c.in
			wo := c.weight[o*c.taps*c.in+from:][:c.in]
			wp := c.weight[p*c.taps*c.in+from:][:c.in]
			dot(&sum, wo, wp, in.row(u), in.row(u+1), in.row(u+2), in.row(u+3))
		}
		for k := range group {
			out[k][o] = sum[k] + c.bias[o]
			out[k][p] = sum[group+k] + c.bias[p]
		}
	}
}

// rows is at for a convolution of one tap over rows that lie apart.
func (c *conv) rows(in, out *[group][]float32) {
	for o := 0; o < c.out; o += 2 {
		p := min(o+1, c.out-1)
		sum := [2 * group]float32{}
		dot(&sum, c.weight[o*c.in:][:c.in], c.weight[p*c.in:][:c.in], in[0], in[1], in[2], in[3])
		for k := range group {
			out[k][o] = sum[k] + c.bias[o]
			out[k][p] = sum[group+k] + c.bias[p]
		}
	}
}

// dot adds the products of two outputs' weights with four frames to sum.
func dot(sum *[2 * group]float32, w, v, a, b, c, d []float32) {
	v, a, b, c, d = v[:len(w)], a[:len(w)], b[:len(w)], c[:len(w)], d[:len(w)]
	s0, s1, s2, s3 := sum[0], sum[1], sum[2], sum[3]
	s4, s5, s6, s7 := sum[4], sum[5], sum[6], sum[7]
	for i, x := range w {
		y := v[i]
		p, q, r, s := a[i], b[i], c[i], d[i]
		s0 += x * p
		s1 += x * q
		s2 += x * r
		s3 += x * s
		s4 += y * p
		s5 += y * q
		s6 += y * r
		s7 += y * s
	}
	sum[0], sum[1], sum[2], sum[3] = s0, s1, s2, s3
	sum[4], sum[5], sum[6], sum[7] = s4, s5, s6, s7
}
