package ear

// conv is a convolution over time.
type conv struct {
	bank // its places are the taps
	bias []float32
}

// over writes the answers for all frames of in to out.
func (c *conv) over(out, in *sheet) {
	near, sum := newRows(c.places*c.in), make([]sums, c.places)
	for t := 0; t < in.frames; t += group {
		for k, row := range near {
			for tap := range c.places {
				copy(row[tap*c.in:], in.row(t+k+tap-c.places/2))
			}
		}
		for o := 0; o < c.out; o += 2 {
			c.products(sum, o, near)
			for j := range min(2, c.out-o) {
				for k := range min(group, in.frames-t) {
					v := c.bias[o+j]
					for _, s := range sum {
						v += s[j][k]
					}
					out.row(t + k)[o+j] = v
				}
			}
		}
	}
}
