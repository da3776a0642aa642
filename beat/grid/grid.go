package grid

import "math"

// Grid is a stretch of beats at their final times.
type Grid struct {
	Beats  []float64 // [s], increasing
	Period float64   // of a beat [s]; the mean where it changes
	Steady bool      // on straight lines throughout
	Near   float64   // share of the attacks within 25 ms of their beats, 0-1
	Spread float64   // root mean square distance of those [s]
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
	cuts := cutUp(hits)
	straight := 0 // beats on lines
	for i := 0; i+1 < len(cuts) && len(beats) >= (len(cuts)-1)*meanPiece; i++ {
		from, to := cuts[i], cuts[i+1]
		if l := fitLine(hits[from:to]); l.judge(hits[from:to]).good() {
			straight += to - from
			for k := from; k < to; k++ {
				g.Beats[k] = l.at(k - from)
			}
		}
	}
	increase(g.Beats)
	g.Steady = straight == len(beats)
	g.Period = (g.Beats[len(beats)-1] - g.Beats[0]) / float64(len(beats)-1)
	f := judgeEach(g.Beats, hits)
	g.Near, g.Spread = f.near, f.spread
	return g
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
