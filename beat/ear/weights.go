package ear

import (
	_ "embed"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"sync"
)

//go:embed weights.bin
var weightsFile []byte

// trained is the network with its weights, read when it is first asked for and
// only read from then on.
var trained = sync.OnceValue(func() *network {
	net, err := parse(weightsFile)
	if err != nil {
		panic(fmt.Sprintf("ear: the embedded weights: %v", err)) // a broken build
	}
	return net
})

// parse reads a weights file: "EAR1", the width of the network as uint16, then
// half-precision floats, all little-endian: mean and scale of each band, and
// for each layer its weights, output by output within tap and input, and its
// biases.
func parse(file []byte) (*network, error) {
	const header = 6
	if len(file) < header || string(file[:4]) != "EAR1" {
		return nil, errors.New("not a weights file")
	}
	width := int(binary.LittleEndian.Uint16(file[4:]))
	r := &halfReader{rest: file[header:]}
	net := &network{width: width, mean: r.take(bands), scale: r.take(bands)}
	net.first = r.conv(frontTaps, bands, front)
	net.second = r.conv(frontTaps, front, width)
	for n := range net.blocks {
		net.blocks[n] = block{
			near: r.dilated(width, width, 1<<n),
			far:  r.dilated(width, width, 2<<n),
			join: r.conv(1, 2*width, width),
		}
	}
	net.out = r.conv(1, width, outputs)
	if r.short || len(r.rest) > 0 {
		return nil, fmt.Errorf("%d bytes do not fit a network of width %d", len(file), width)
	}
	return net, nil
}

// halfReader takes half-precision floats off a slice.
type halfReader struct {
	rest  []byte
	short bool
}

func (r *halfReader) take(n int) []float32 {
	out := make([]float32, n)
	if len(r.rest) < 2*n {
		r.short = true
		return out
	}
	for i := range out {
		out[i] = half(binary.LittleEndian.Uint16(r.rest[2*i:]))
	}
	r.rest = r.rest[2*n:]
	return out
}

// conv reads a convolution.
func (r *halfReader) conv(taps, in, out int) conv {
	w := r.take(taps * in * out)
	return conv{
		bank: newBank(in, out, taps, func(o, tap, i int) float32 { return w[(tap*in+i)*out+o] }),
		bias: r.take(out),
	}
}

// dilated reads one whose taps lie apart.
func (r *halfReader) dilated(in, out, dilation int) dilated {
	w := r.take(taps * in * out)
	values := make([][points]float32, in*out)
	for at := range values {
		var g [taps]float32
		for tap := range g {
			g[tap] = w[tap*in*out+at]
		}
		values[at] = valuesOf(g)
	}
	return dilated{
		bank:     newBank(in, out, points, func(o, p, i int) float32 { return values[i*out+o][p] }),
		bias:     r.take(out),
		dilation: dilation,
	}
}

// half widens an IEEE 754 binary16 number.
func half(h uint16) float32 {
	sign, exp, frac := uint32(h>>15)<<31, uint32(h>>10)&0x1F, uint32(h)&0x3FF
	if exp == 0 { // zero or subnormal: frac · 2⁻²⁴
		v := float32(frac) / (1 << 24)
		return math.Float32frombits(math.Float32bits(v) | sign)
	}
	return math.Float32frombits(sign | (exp+112)<<23 | frac<<13)
}
