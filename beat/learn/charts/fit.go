package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"

	"onphrase/beat/decode"
	"onphrase/beat/internal/dsp"
	"onphrase/beat/learn/charts/chart"
	"onphrase/beat/spectral"
)

const (
	maxOffset   = 0.085 // by how much a chart may lie beside its sound: less than the sixteenth of fast music [s]
	window      = 24    // counts that are held against the onsets together
	near        = 0.020 // how near their best offset must be to that of the song [s]
	leastShare  = 0.70  // of the windows with onsets
	leastRise   = 0.15  // onset strength on the counts over that beside them, in means
	leastLength = 60.0  // of a song [s]
)

// song is a pair whose chart was held against its sound.
type song struct {
	pair
	sound    string // file that was heard
	bpm      float64
	offset   float64 // of the sound against the chart [s]
	share    float64 // of windows that agree with it
	reject   string  // why the chart does not fit; "" where it does
	beats    []chart.Beat
	sections []chart.Section
	steady   bool
}

// onsets is how much new sound begins, and where there is sound.
type onsets struct {
	curve    []float64 // spectral.OnsetRate values a second, mean 1
	from, to float64   // [s]
}

// fitTo holds a chart against onsets: the offset at which most new sound begins
// on its counts, and the share of the song's windows that have the same.
func fitTo(c *chart.Chart, o onsets) (offset, share float64, reject string) {
	beats := c.Beats(o.from, o.to)
	if len(beats) < 3*window {
		return 0, 0, "too few counts"
	}
	offset, rise := bestOffset(beats, o.curve, 0)
	switch {
	case rise < leastRise:
		return offset, 0, "its counts are no onsets"
	case math.Abs(offset) > maxOffset-near/2:
		return offset, 0, "it lies beside its sound"
	}
	agree, n := 0, 0
	for part := range slices.Chunk(beats, window) {
		if len(part) < window/2 {
			continue
		}
		d, rise := bestOffset(part, o.curve, offset)
		if rise < 2*leastRise {
			continue
		}
		n++
		if math.Abs(d-offset) <= near {
			agree++
		}
	}
	if n > 0 {
		share = float64(agree) / float64(n)
	}
	if n < 2 || share < leastShare {
		reject = "it drifts, or is of other music"
	}
	return offset, share, reject
}

// between reports whether more new sound begins half way between the counts than
// on them. Whoever charts music of others may take one for the other.
func between(c *chart.Chart, o onsets, offset float64) bool {
	beats := c.Beats(o.from, o.to)
	on, off := 0.0, 0.0
	for i := 1; i < len(beats); i++ {
		t, period := beats[i].Time+offset, beats[i].Time-beats[i-1].Time
		on += at(o.curve, t*spectral.OnsetRate)
		off += at(o.curve, (t-period/2)*spectral.OnsetRate)
	}
	return off >= on
}

// bestOffset is the shift within maxOffset of around that puts most onset strength
// on the counts, and how much more that is than the mean over a whole count, in
// means of the whole song.
func bestOffset(beats []chart.Beat, curve []float64, around float64) (offset, rise float64) {
	far := (beats[len(beats)-1].Time - beats[0].Time) / float64(len(beats)-1) / 2
	const step = 0.001
	best, sum, n := math.Inf(-1), 0.0, 0
	for d := -far; d <= far; d += step {
		v := 0.0
		for _, b := range beats {
			v += at(curve, (b.Time+around+d)*spectral.OnsetRate)
		}
		v /= float64(len(beats))
		sum += v
		n++
		// Of two offsets that are as good, the nearer is taken.
		if w := v - 0.3*math.Abs(d); math.Abs(d) <= maxOffset && w > best {
			best, offset, rise = w, around+d, v
		}
	}
	return offset, rise - sum/float64(n)
}

// at reads a curve between its values; 0 outside.
func at(x []float64, i float64) float64 {
	k := int(math.Floor(i))
	if k < 0 || k+1 >= len(x) {
		return 0
	}
	f := i - float64(k)
	return x[k]*(1-f) + x[k+1]*f
}

// hear measures the onsets of a file.
func hear(file string) (onsets, error) {
	stream, err := decode.Open(file, decode.Auto)
	if err != nil {
		return onsets{}, err
	}
	defer stream.Close()
	channels := stream.Channels()
	resampler := dsp.NewResampler(stream.Rate(), spectral.Rate, channels)
	recorder := spectral.NewRecorder(channels)
	in := make([]float32, 8192*channels)
	var out []float64
	var o onsets
	samples, first, last := 0, -1, 0
	for {
		n, err := stream.Read(in)
		for i, v := range in[:n] {
			if v > 0.003 || v < -0.003 { // -50 dB of full scale
				last = samples + i/channels
				if first < 0 {
					first = last
				}
			}
		}
		samples += n / channels
		out = resampler.Write(out[:0], in[:n])
		if err != nil {
			out = resampler.Flush(out)
		}
		recorder.Write(out)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return onsets{}, err
		}
	}
	if first < 0 || float64(last-first) < leastLength*float64(stream.Rate()) {
		return onsets{}, fmt.Errorf("less than %.0f s of sound", leastLength)
	}
	o.from, o.to = float64(first)/float64(stream.Rate()), float64(last)/float64(stream.Rate())
	_, bands, _ := recorder.Finish()
	o.curve = together(bands.Even())
	return o, nil
}

// together adds the bands up, to a mean of 1.
func together(bands [][]float64) []float64 {
	out := make([]float64, len(bands[0]))
	sum := 0.0
	for _, b := range bands {
		for i, v := range b {
			out[i] += v
			sum += v
		}
	}
	for i := range out {
		out[i] *= float64(len(out)) / max(sum, 1e-9)
	}
	return out
}
