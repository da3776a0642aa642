package ear

// dilated is a convolution over time whose five taps lie some frames apart. It
// finds two answers at a time, as far apart as the taps, with six products
// instead of ten: a convolution is a product of polynomials, which is known from
// its values at six points, here 0, 1, -1, 2, -2 and infinity.
//
// Ref: Winograd 1980, "Arithmetic Complexity of Computations"; Lavin & Gray
// 2016, "Fast algorithms for convolutional neural networks", F(2, 5).
type dilated struct {
	bank     // its places are the points
	bias     []float32
	dilation int // frames from tap to tap
}

const points = 6

// valuesOf are the values at the points of the polynomial of a convolution's
// taps, divided by what the products there will be too great by.
func valuesOf(g [taps]float32) [points]float32 {
	even, odd := g[0]+g[2]+g[4], g[1]+g[3]
	even2, odd2 := g[0]+4*g[2]+16*g[4], 2*g[1]+8*g[3]
	return [points]float32{
		g[0] / 4, -(even + odd) / 6, -(even - odd) / 6,
		(even2 + odd2) / 24, (even2 - odd2) / 24, g[4],
	}
}

// over writes the answers for all frames of in to the channels of out from at
// on. It may write to out's margin after the last frame as well.
func (d *dilated) over(out *sheet, at int, in *sheet) {
	near := newRows(points * d.in)
	var sum [points]sums
	for i := 0; d.first(i) < in.frames; i += group {
		for k, row := range near {
			d.gather(row, in, d.first(i+k))
		}
		for o := 0; o < d.out; o += 2 {
			d.products(sum[:], o, near)
			for j := range min(2, d.out-o) {
				for k := range group {
					t := d.first(i + k)
					one, two := answers(&sum, j, k)
					out.row(t)[at+o+j] = one + d.bias[o+j]
					out.row(t + d.dilation)[at+o+j] = two + d.bias[o+j]
				}
			}
		}
	}
}

// first is the first frame of pair i.
func (d *dilated) first(i int) int { return i/d.dilation*2*d.dilation + i%d.dilation }

// gather sets row, point by point, to what the answers for frame t and the one
// a dilation later depend on.
func (d *dilated) gather(row []float32, in *sheet, t int) {
	var x, v [points][]float32
	for p := range points {
		x[p] = in.row(t + (p-taps/2)*d.dilation)
		v[p] = row[p*d.in:][:d.in]
	}
	for c := range d.in {
		x0, x1, x2, x3, x4, x5 := x[0][c], x[1][c], x[2][c], x[3][c], x[4][c], x[5][c]
		v[0][c] = 4*x0 - 5*x2 + x4
		a, b := x4-4*x2, x3-4*x1
		v[1][c], v[2][c] = a+b, a-b
		a, b = x4-x2, 2*(x3-x1)
		v[3][c], v[4][c] = a+b, a-b
		v[5][c] = 4*x1 - 5*x3 + x5
	}
}

// answers makes the two answers of output j and row k of the products.
func answers(m *[points]sums, j, k int) (one, two float32) {
	a, b, c, d := m[1][j][k], m[2][j][k], m[3][j][k], m[4][j][k]
	return m[0][j][k] + (a + b) + (c + d), (a - b) + 2*(c-d) + m[5][j][k]
}
