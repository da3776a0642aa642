package grid

import (
	"math"

	"onphrase/beat/internal/dsp"
)

const (
	tukey      = 0.030 // hits further from the line count nothing [s]
	rounds     = 12    // of reweighting; it settles sooner
	nearLine   = 0.025 // [s]
	leastNear  = 0.75  // share of the hits that must be near the line
	mostSpread = 0.014 // root mean square of those [s]
	leastHits  = 8
)

// line is a grid: beat k at Start + k·Period.
type line struct{ Start, Period float64 }

func (l line) at(k int) float64 { return l.Start + float64(k)*l.Period }

// fitLine fits one grid to the hits by least squares with Tukey's weights,
// starting from the median slope between hits far apart.
func fitLine(hits []Hit) line {
	l := startLine(hits)
	for range rounds {
		var w, x, y, xx, xy float64
		for k, h := range hits {
			r := (h.Time - l.at(k)) / tukey
			if h.Weight == 0 || math.Abs(r) >= 1 {
				continue
			}
			u := h.Weight * (1 - r*r) * (1 - r*r)
			k := float64(k)
			w, x, y = w+u, x+u*k, y+u*h.Time
			xx, xy = xx+u*k*k, xy+u*k*h.Time
		}
		det := w*xx - x*x
		if det <= 1e-9*w*xx || w == 0 {
			break
		}
		l = line{Start: (xx*y - x*xy) / det, Period: (w*xy - x*y) / det}
	}
	return l
}

// startLine is a first guess that a third of wrong hits cannot mislead.
func startLine(hits []Hit) line {
	half := len(hits) / 2
	var slopes, starts []float64
	for k := 0; k+half < len(hits); k++ {
		slopes = append(slopes, (hits[k+half].Time-hits[k].Time)/float64(half))
	}
	l := line{Period: dsp.Median(slopes)}
	for k, h := range hits {
		starts = append(starts, h.Time-float64(k)*l.Period)
	}
	l.Start = dsp.Median(starts)
	return l
}

// fit says how well hits keep to a line.
type fit struct {
	near   float64 // share of their weight within nearLine
	spread float64 // root mean square distance of those [s]
	hits   int     // number of hits with any weight
}

func (l line) judge(hits []Hit) fit {
	var f fit
	var all, near, square float64
	for k, h := range hits {
		if h.Weight == 0 {
			continue
		}
		f.hits++
		all += h.Weight
		if d := math.Abs(h.Time - l.at(k)); d <= nearLine {
			near += h.Weight
			square += h.Weight * d * d
		}
	}
	if near > 0 {
		f.near, f.spread = near/all, math.Sqrt(square/near)
	}
	return f
}

func (f fit) good() bool { return f.hits >= leastHits && f.near >= leastNear && f.spread <= mostSpread }
