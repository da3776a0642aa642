package tempo

import (
	"math"

	"onphrase/beat/internal/dsp"
)

const (
	window   = 12.0 // length of sound judged at once [s]
	hop      = 3.0  // from one window to the next [s]
	shortest = 0.27 // period [s]
	longest  = 1.2  // period [s]
	spacing  = 0.01 // of the periods, relative
	repeats  = 4    // multiples of a period that must repeat, too
	exponent = 0.67 // of the generalised autocorrelation: below 2 sharpens its peaks
)

// Tempogram says how strongly the music repeats with each period, window by
// window.
//
// Ref: Percival & Tzanetakis 2014, "Streamlined tempo estimation based on
// autocorrelation and cross-correlation with pulses" (IEEE/ACM TASLP 22); the
// windows and the enhancement by multiples are ours.
type Tempogram struct {
	Periods  []float64   // [s], increasing
	Strength [][]float64 // by window and period, about 0-1
	Hop      float64     // from one window to the next [s]
	Centre   float64     // of the first window [s]

	repeat [][]float64 // by window and lag [frames]: the autocorrelation
	fps    float64
}

// Measure takes onset curves of the same length, at fps frames per second.
func Measure(curves [][]float64, fps float64) *Tempogram {
	g := &Tempogram{Hop: hop, Centre: window / 2, fps: fps}
	for p := shortest; p <= longest; p *= 1 + spacing {
		g.Periods = append(g.Periods, p)
	}
	n, size := len(curves[0]), int(window*fps)
	if n < size {
		g.Centre = float64(n) / fps / 2
	}
	for start := 0; start == 0 || start+size <= n; start += int(hop * fps) {
		r := repetition(curves, start, min(n, start+size), fps)
		g.repeat = append(g.repeat, r)
		g.Strength = append(g.Strength, g.strengths(r))
	}
	return g
}

// repetition is the mean autocorrelation of the curves from frame start to
// end, 1 at lag 0.
func repetition(curves [][]float64, start, end int, fps float64) []float64 {
	sum := make([]float64, int(longest*repeats*fps)+2)
	for _, c := range curves {
		r := dsp.Autocorrelation(withoutMean(c[start:end]), len(sum), exponent)
		if r[0] <= 0 {
			continue
		}
		for i := range sum {
			sum[i] += r[i] / r[0] / float64(len(curves))
		}
	}
	return sum
}

// strengths is how well each period and its multiples repeat.
func (g *Tempogram) strengths(repeat []float64) []float64 {
	s := make([]float64, len(g.Periods))
	for i, p := range g.Periods {
		for k := 1; k <= repeats; k++ {
			s[i] += at(repeat, p*float64(k)*g.fps) / repeats
		}
	}
	return s
}

// refine is the period near p that repeats best in window w, judged by all
// the multiples that the autocorrelation holds: the longest tell it best.
func (g *Tempogram) refine(w int, p float64) float64 {
	const step = spacing / 20
	best, bestSum := p, math.Inf(-1)
	for f := 1 - spacing; f <= 1+spacing; f += step {
		sum := 0.0
		for k := 1; p*float64(k) <= longest*repeats/(1+spacing); k++ {
			sum += float64(k) * at(g.repeat[w], p*f*float64(k)*g.fps)
		}
		if sum > bestSum {
			best, bestSum = p*f, sum
		}
	}
	return best
}

func withoutMean(x []float64) []float64 {
	mean := 0.0
	for _, v := range x {
		mean += v / float64(len(x))
	}
	y := make([]float64, len(x))
	for i, v := range x {
		y[i] = v - mean
	}
	return y
}

// at reads x between its samples.
func at(x []float64, pos float64) float64 {
	i := int(pos)
	f := pos - math.Floor(pos)
	return x[i]*(1-f) + x[i+1]*f
}
