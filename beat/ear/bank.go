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

// sums are those of two outputs for each of a group's rows.
type sums [2][group]float32

// bank is the weights of a layer, laid out in the order in which they are used:
// for each two outputs, place by place, those of all inputs for the one output
// and for the other. A place is a tap of a convolution, or what stands for it.
type bank struct {
	in, out, places int
	weight          []float32
}

// newBank lays weights out. Of an odd number of outputs, the last is there twice.
func newBank(in, out, places int, weight func(out, place, in int) float32) bank {
	b := bank{in: in, out: out, places: places}
	for o := 0; o < out; o += 2 {
		for p := range places {
			for _, o := range [2]int{o, min(o+1, out-1)} {
				for i := range in {
					b.weight = append(b.weight, weight(o, p, i))
				}
			}
		}
	}
	return b
}

// products sets, for each place, the sums of the products of rows with the
// weights of outputs o and o+1; o is even. The rows are laid out place by place.
func (b *bank) products(of []sums, o int, x *rows) {
	for p := range of {
		at := p * b.in
		dot(&of[p], b.weight[o*b.places*b.in+2*at:][:2*b.in], x, at)
	}
}

// dot is the products of two outputs' weights with rows from the at-th value on.
func dot(of *sums, w []float32, x *rows, at int) {
	n := len(w) / 2
	w, v := w[:n], w[n:][:n]
	a, b, c := x[0][at:][:n], x[1][at:][:n], x[2][at:][:n]
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
	of[0][0], of[0][1], of[0][2] = s0, s1, s2
	of[1][0], of[1][1], of[1][2] = s3, s4, s5
}
