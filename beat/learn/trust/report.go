package main

import (
	"fmt"
	"io"
	"math"
	"slices"

	"onphrase/beat/score"
)

// localBins are finer where beat.leastHeld is chosen.
var localBins = []float64{0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1}

// report says how good the trust is on a folder. Where the weights were fitted
// to it, each track is judged by those fitted to all the others.
func report(w io.Writer, name string, tracks []heard, weights []float64, fitted bool, ridge float64) {
	all := examples(tracks)
	var list []score.Claim
	loss := 0.0
	for i, e := range all {
		own := weights
		if fitted {
			own = fit(slices.Concat(all[:i], all[i+1:]), ridge)
		}
		c := score.Claim{Trust: probability(e.signs, own)}
		if e.right {
			c.Right = 1
		}
		loss -= math.Log(math.Abs(1 - c.Right - c.Trust))
		list = append(list, c)
	}
	fmt.Fprintf(w, "\n%s: %d tracks, mean negative log-likelihood %.3f\ntrust in the beats: tracks, mean trust, share with F >= %.1f\n", name, len(list), loss/float64(len(list)), goodF)
	score.WriteReliability(w, score.TrustBins, list)
	surprises(w, all, list)
	var local []score.Claim
	for _, h := range tracks {
		local = append(local, h.local()...)
	}
	fmt.Fprintln(w, "activation around a count: counts, mean, share within 70 ms of a true one")
	score.WriteReliability(w, localBins, local)
	extremes(w, tracks)
}

// surprises lists the tracks whose trust is far from what was so.
func surprises(w io.Writer, all []example, list []score.Claim) {
	const far = 0.7
	for i, c := range list {
		if math.Abs(c.Right-c.Trust) > far {
			fmt.Fprintf(w, "  %-10s trust %.2f, right %.0f, signs %.2f\n", all[i].id, c.Trust, c.Right, all[i].signs[1:])
		}
	}
}

const window = 0.07 // [s]

// local holds the activation around each count against whether it is right.
func (h heard) local() []score.Claim {
	var out []score.Claim
	if len(h.truth) < fewest {
		return nil
	}
	for _, c := range h.claims {
		for k, t := range c.Beats {
			out = append(out, score.Claim{Trust: c.Around[k], Right: score.FMeasure([]float64{t}, nearest(h.truth, t), window)})
		}
	}
	return out
}

// nearest is the true beat nearest to a time.
func nearest(truth []float64, t float64) []float64 {
	return []float64{slices.MinFunc(truth, func(a, b float64) int {
		if math.Abs(a-t) < math.Abs(b-t) {
			return -1
		}
		return 1
	})}
}

// extremes lists what leastSure has to part: the surest sounds without a beat,
// and the least sure music.
func extremes(w io.Writer, tracks []heard) {
	const shown = 8
	slices.SortFunc(tracks, func(a, b heard) int {
		if a.sure < b.sure {
			return -1
		}
		return 1
	})
	fmt.Fprintf(w, "mean activation of the ear on its counts:\n  sounds without a beat, the greatest")
	n := 0
	for _, h := range slices.Backward(tracks) {
		if len(h.truth) < fewest && n < shown {
			fmt.Fprintf(w, " %.2f", h.sure)
			n++
		}
	}
	fmt.Fprintf(w, "\n  music, the least (* heard right)")
	n = 0
	for _, h := range tracks {
		if len(h.truth) >= fewest && n < 2*shown {
			mark := ""
			if h.right() {
				mark = "*"
			}
			fmt.Fprintf(w, " %.2f%s", h.sure, mark)
			n++
		}
	}
	fmt.Fprintln(w)
}
