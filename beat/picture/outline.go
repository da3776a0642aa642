package picture

import (
	"errors"
	"io"
	"math"

	"onphrase/beat"
)

// sliceLength is how long a slice of an outline is [s].
const sliceLength = 0.5

// Outline is how loud a track is as it goes on: 0 (silence) to 1 (its loudest)
// for every half second, about a count.
type Outline []float64

// Listen takes the outline of a stream: the root mean square of each slice.
func Listen(src beat.Source) (Outline, error) {
	var o Outline
	size := max(1, int(sliceLength*float64(src.Rate())))
	block := make([]float32, 4096*src.Channels())
	sum, n := 0.0, 0
	for {
		got, err := src.Read(block)
		for i := 0; i < got; i += src.Channels() {
			for _, v := range block[i : i+src.Channels()] {
				sum += float64(v) * float64(v)
			}
			if n++; n == size {
				o = append(o, math.Sqrt(sum/float64(n*src.Channels())))
				sum, n = 0, 0
			}
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
	}
	most := 0.0
	for _, v := range o {
		most = max(most, v)
	}
	for i := range o {
		if most > 0 {
			o[i] /= most
		}
	}
	return o, nil
}

// between is the mean level from one time to another [s].
func (o Outline) between(from, to float64) float64 {
	a := min(max(0, int(from/sliceLength)), len(o))
	b := min(max(a+1, int(to/sliceLength)), len(o))
	if a >= b {
		return 0
	}
	sum := 0.0
	for _, v := range o[a:b] {
		sum += v
	}
	return sum / float64(b-a)
}
