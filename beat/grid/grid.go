package grid

import "math"

// Grid is a stretch of beats at their final times.
type Grid struct {
	Beats  []float64 // [s], increasing
	Lines  []Line    // the straight ones among them, in order; what lies between was played by people
	Period float64   // of a beat [s]; the mean where it changes
	Near   float64   // share of the attacks within 25 ms of their beats, 0-1
	Spread float64   // root mean square distance of those [s]
}

// Line is a straight row of beats: those from From to before To.
type Line struct {
	From, To int
	Period   float64 // of a beat [s]
	Step     bool    // it begins at once where the line before ends
}

// Fit gives beats [s] their final times after the hits that belong to them.
// Machine-made music keeps to a line, or to a few where it was cut or changes
// its tempo, and is carried along it through breaks without a hit; what does
// not is followed.
func Fit(beats []float64, hits []Hit) Grid {
	if len(beats) < 2 {
		return Grid{Beats: beats}
	}
	g := Grid{Beats: follow(beats, hits)}
	all := carry(hits, pieces(hits))
	for i, p := range all {
		if !p.machine() {
			continue
		}
		for k := p.from; k < p.to; k++ {
			g.Beats[k] = p.at(k - p.from)
		}
		step := i > 0 && p.whole() && all[i-1].whole()
		g.Lines = append(g.Lines, Line{p.from, p.to, p.Period, step})
	}
	g.Beats[0] = max(0, g.Beats[0]) // no sooner than the first sample
	increase(g.Beats)
	g.Period = (g.Beats[len(beats)-1] - g.Beats[0]) / float64(len(beats)-1)
	f := judgeEach(g.Beats, hits)
	g.Near, g.Spread = f.near, f.spread
	return g
}

// leastKept is the share of the attacks that is near their beats where they keep
// to them: of what falls anywhere within reach about half is.
const leastKept = 0.9

// Keep reports whether the hits keep to beats [s] that are on no line, rather
// than that the beats were put where anything sounds.
func Keep(beats []float64, hits []Hit) bool {
	f := judgeEach(beats, hits)
	return f.hits >= leastHits && f.near >= leastKept && f.spread <= mostSpread
}

func judgeEach(beats []float64, hits []Hit) fit {
	around := make([]Hit, len(hits))
	for k, h := range hits {
		around[k] = Hit{Time: h.Time - beats[k], Weight: h.Weight}
	}
	return line{}.judge(around)
}

const (
	followOver = 6    // beats on either side that a beat is smoothed over
	restWeight = 0.05 // of the decoded time where no hit is found
)

// follow smooths the times of the hits by a straight line through the
// neighbours of each beat, the nearest counting most.
func follow(beats []float64, hits []Hit) []float64 {
	out := make([]float64, len(beats))
	for k := range beats {
		var w, x, y, xx, xy float64
		for j := max(0, k-followOver); j <= min(len(beats)-1, k+followOver); j++ {
			d := float64(j - k)
			bell := 1 - math.Abs(d)/(followOver+1)
			u := bell * max(hits[j].Weight, restWeight)
			w, x, y = w+u, x+u*d, y+u*hits[j].Time
			xx, xy = xx+u*d*d, xy+u*d*hits[j].Time
		}
		out[k] = (xx*y - x*xy) / (w*xx - x*x)
	}
	return out
}

// increase parts beats that cross: lines of neighbours may where hits are wild.
func increase(beats []float64) {
	const apart = 0.001 // [s]
	for k := 1; k < len(beats); k++ {
		if beats[k] <= beats[k-1] {
			beats[k] = beats[k-1] + apart
		}
	}
}
