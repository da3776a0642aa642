package dsp

import (
	"math"
	"math/bits"
	"math/cmplx"
)

// radix4 is a discrete Fourier transform of one length, a power of two and 4
// at least, with all that can be computed ahead. It allocates nothing: every
// frame of every track goes through it. Several goroutines may use one.
//
// Ref: Cooley & Tukey 1965, "An algorithm for the machine calculation of
// complex Fourier series"; decimation in time, radix 4.
type radix4 struct {
	first  []int        // of each four inputs of the first step, that which comes first
	stages [][]twiddles // of each radix-4 step but the first, which turns nothing
	last   []complex128 // of an odd power of two: turns the second half in a last step of radix 2
}

// twiddles turn three of the four parts that a step joins by one, two and
// three times an angle.
type twiddles struct{ one, two, three complex128 }

func newRadix4(size int) *radix4 {
	width := bits.TrailingZeros(uint(size))
	f := &radix4{first: make([]int, size/4)}
	for i := range f.first {
		f.first[i] = int(bits.Reverse(uint(4*i)) >> (bits.UintSize - width))
	}
	quarter := 4
	for ; 4*quarter <= size; quarter *= 4 {
		stage := make([]twiddles, quarter)
		for k := range stage {
			angle := -2 * math.Pi * float64(k) / float64(4*quarter)
			stage[k] = twiddles{cmplx.Rect(1, angle), cmplx.Rect(1, 2*angle), cmplx.Rect(1, 3*angle)}
		}
		f.stages = append(f.stages, stage)
	}
	if width%2 == 1 {
		f.last = make([]complex128, size/2)
		for k := range f.last {
			f.last[k] = cmplx.Rect(1, -2*math.Pi*float64(k)/float64(size))
		}
	}
	return f
}

// run writes the transform of x to z.
func (f *radix4) run(z, x []complex128) {
	f.fours(z, x)
	for _, stage := range f.stages {
		for i := 0; i < len(z); i += 4 * len(stage) {
			join(z[i:i+4*len(stage)], stage)
		}
	}
	if f.last != nil {
		f.twos(z)
	}
}

// fours transforms each four values of x that lie a quarter apart.
func (f *radix4) fours(z, x []complex128) {
	n := len(f.first)
	a, b, c, d := x[:n:n], x[n:][:n:n], x[2*n:][:n:n], x[3*n:][:n:n]
	for _, i := range f.first {
		p, q, r, s := a[i], c[i], b[i], d[i]
		sum, difference := p+q, p-q
		oddSum, odd := r+s, r-s
		odd = complex(imag(odd), -real(odd))
		to := (*[4]complex128)(z)
		to[0], to[1], to[2], to[3] = sum+oddSum, difference+odd, sum-oddSum, difference-odd
		z = z[4:]
	}
}

// join makes one transform of four that stand one after the other: those of
// every fourth input from the first, the third, the second and the fourth on.
func join(z []complex128, stage []twiddles) {
	n := len(stage)
	a, b, c, d := z[:n:n], z[n:][:n:n], z[2*n:][:n:n], z[3*n:][:n:n]
	for k := range stage {
		w := &stage[k]
		p, q, r, s := a[k], w.two*b[k], w.one*c[k], w.three*d[k]
		sum, difference := p+q, p-q
		oddSum, odd := r+s, r-s
		odd = complex(imag(odd), -real(odd))
		a[k], b[k], c[k], d[k] = sum+oddSum, difference+odd, sum-oddSum, difference-odd
	}
}

// twos makes one transform of two: those of the even inputs and of the odd.
func (f *radix4) twos(z []complex128) {
	n := len(f.last)
	a, b := z[:n:n], z[n:][:n:n]
	for k, w := range f.last {
		p, q := a[k], w*b[k]
		a[k], b[k] = p+q, p-q
	}
}
