package dsp

import (
	"math"
	"math/bits"
	"math/cmplx"
)

// radix4 is a discrete Fourier transform of one length, a power of two, with
// all that can be computed ahead. It allocates nothing: every frame of every
// track goes through it.
//
// Ref: Cooley & Tukey 1965, "An algorithm for the machine calculation of
// complex Fourier series"; decimation in time, radix 4.
type radix4 struct {
	order  []int        // where each input goes: its index with the bits reversed
	odd    bool         // an odd power of two begins with a step of radix 2
	stages [][]twiddles // of each radix-4 step but the first, which turns nothing
}

// twiddles turn three of the four parts that a step joins by one, two and
// three times an angle.
type twiddles struct{ one, two, three complex128 }

func newRadix4(size int) *radix4 {
	width := bits.TrailingZeros(uint(size))
	f := &radix4{order: make([]int, size), odd: width%2 == 1}
	for i := range f.order {
		f.order[i] = int(bits.Reverse(uint(i)) >> (bits.UintSize - width))
	}
	quarter := 4
	if f.odd {
		quarter = 2
	}
	for ; 4*quarter <= size; quarter *= 4 {
		stage := make([]twiddles, quarter)
		for k := range stage {
			angle := -2 * math.Pi * float64(k) / float64(4*quarter)
			stage[k] = twiddles{cmplx.Rect(1, angle), cmplx.Rect(1, 2*angle), cmplx.Rect(1, 3*angle)}
		}
		f.stages = append(f.stages, stage)
	}
	return f
}

// run transforms z, whose values stand in f's order, in place.
func (f *radix4) run(z []complex128) {
	if f.odd {
		twos(z)
	} else {
		fours(z)
	}
	for _, stage := range f.stages {
		for i := 0; i < len(z); i += 4 * len(stage) {
			join(z[i:i+4*len(stage)], stage)
		}
	}
}

// twos transforms each two values.
func twos(z []complex128) {
	for i := 0; i+1 < len(z); i += 2 {
		z[i], z[i+1] = z[i]+z[i+1], z[i]-z[i+1]
	}
}

// fours transforms each four values; the second and third have changed places.
func fours(z []complex128) {
	for ; len(z) >= 4; z = z[4:] {
		sum, difference := z[0]+z[1], z[0]-z[1]
		oddSum, odd := z[2]+z[3], z[2]-z[3]
		odd = complex(imag(odd), -real(odd))
		z[0], z[1], z[2], z[3] = sum+oddSum, difference+odd, sum-oddSum, difference-odd
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
