package reading

import (
	"math"
	"slices"

	"onphrase/beat/internal/dsp"
)

// Ear is what the ear hears of a stretch: how likely each frame is a count and
// a count 1 (0-1, frame i at i/FPS seconds), and the row of counts that it
// makes of it [s].
type Ear struct {
	Beat, One []float64
	FPS       float64
	Counts    []float64
}

const (
	mostSure  = 0.98 // activation beyond which the ear is not believed more
	nearFrame = 2    // frames to either side of a count in which the ear hears it
	oneLevel  = 0.1  // how far an interval may be from the usual [log-units]
)

// bars are the numbers of counts after which a count may stand out.
var bars = []int{2, 3, 4}

// Own are the readings that the ear's own counts offer: as they are, and, within
// limits, every second of them and twice as many.
func (e Ear) Own(limits Limits) []Reading {
	if len(e.Counts) < fewestLead {
		return nil
	}
	period := usual(e.Counts)
	var double []float64
	for i, t := range e.Counts {
		if i > 0 {
			double = append(double, (e.Counts[i-1]+t)/2)
		}
		double = append(double, t)
	}
	own := []Reading{{Beats: e.Counts, Period: period, own: true}}
	for _, other := range []Reading{
		{Beats: everySecond(e.Counts, 0), Period: 2 * period},
		{Beats: everySecond(e.Counts, 1), Period: 2 * period},
		{Beats: double, Period: period / 2},
	} {
		if other.Period >= limits.Shortest && other.Period <= limits.Longest {
			own = append(own, other)
		}
	}
	return own
}

// listen collects the clues that the ear has of a reading, in the order of
// heardWeights. period is that of the music's repetition, at any level [s].
func (e *Ear) listen(r Reading, h hearing, period func(t float64) float64) Clues {
	var c Clues
	var on []float64
	for place, times := range placesOf(r.Beats) {
		row := make([]float64, 0, len(times))
		for _, t := range times {
			row = append(row, odd(peak(e.Beat, t*e.FPS, nearFrame)))
		}
		if place == onPlace {
			on = row
		}
		c = append(c, mean(row))
	}
	for _, every := range bars {
		c = append(c, standsOut(on, every))
	}
	own, level := 0.0, 1.0
	if r.own {
		own, level = 1, steadiness(r.Beats, period)
	}
	octaves := math.Log2(usualPeriod / r.Period)
	return append(c, h.counts(r.Beats), h.ones(r.Beats), shared(e.Counts, r.Beats), own, level, octaves, octaves*octaves)
}

// odd is the log-odds of a probability.
func odd(p float64) float64 {
	p = min(mostSure, max(1-mostSure, p))
	return math.Log(p / (1 - p))
}

// standsOut is by how much every so-many-th of x is more than the others, on
// the best place.
func standsOut(x []float64, every int) float64 {
	best := 0.0
	for first := range every {
		var sum, n [2]float64
		for i, v := range x {
			k := 0
			if i%every == first {
				k = 1
			}
			sum[k], n[k] = sum[k]+v, n[k]+1
		}
		if n[0] > 0 && n[1] > 0 {
			best = max(best, sum[1]/n[1]-sum[0]/n[0])
		}
	}
	return best
}

// steadiness is the share of the counts that keep to one multiple of the
// music's period: music is counted at one level throughout.
func steadiness(counts []float64, period func(t float64) float64) float64 {
	var ratio []float64
	for i := 1; i < len(counts); i++ {
		ratio = append(ratio, math.Log((counts[i]-counts[i-1])/period(counts[i])))
	}
	middle := dsp.Median(ratio)
	n := 0
	for _, v := range ratio {
		if math.Abs(v-middle) < oneLevel {
			n++
		}
	}
	return float64(n) / float64(max(1, len(ratio)))
}

// hearing says how well a row of counts explains what the ear hears: the
// likelihood of the targets that the ear was trained to give, 1 on a count and
// falling to 0 two frames away.
type hearing struct {
	beat, one likelihood
	fps       float64
}

// likelihood of one activation over some frames.
type likelihood struct {
	first  int       // of the frames
	silent []float64 // sum of log(1-a) up to each frame
	odds   []float64 // log-odds of each frame
}

// hearing is for the readings of one stretch.
func (e *Ear) hearing(all []Reading) hearing {
	from, to := math.Inf(1), 0.0
	for _, r := range all {
		if len(r.Beats) > 0 {
			from, to = min(from, r.Beats[0]), max(to, r.Beats[len(r.Beats)-1])
		}
	}
	last := min(len(e.Beat), int(to*e.FPS)+nearFrame+1)
	first := min(last, max(0, int(min(from, to)*e.FPS)-nearFrame))
	return hearing{beat: newLikelihood(e.Beat[first:last], first), one: newLikelihood(e.One[first:last], first),
		fps: e.FPS}
}

func newLikelihood(a []float64, first int) likelihood {
	l := likelihood{first: first, silent: make([]float64, len(a)+1), odds: make([]float64, len(a))}
	for i, v := range a {
		v = min(mostSure, max(1-mostSure, v))
		l.silent[i+1] = l.silent[i] + math.Log(1-v)
		l.odds[i] = odd(v)
	}
	return l
}

// nothing is the log-likelihood, per second, of no count from the first to the
// last of beats.
func (l likelihood) nothing(beats []float64, fps float64) (perSecond, seconds float64) {
	last := len(l.odds)
	from := min(last, max(0, int(beats[0]*fps)-1-l.first))
	to := min(last, max(from, int(beats[len(beats)-1]*fps)+2-l.first))
	seconds = float64(max(1, to-from)) / fps
	return (l.silent[to] - l.silent[from]) / seconds, seconds
}

// gain is what a count at frame f adds to it.
func (l likelihood) gain(f float64) float64 {
	sum := 0.0
	for i := int(f) - 1; i <= int(f)+nearFrame; i++ {
		at := i - l.first
		if share := 1 - math.Abs(float64(i)-f)/nearFrame; at >= 0 && at < len(l.odds) && share > 0 {
			sum += share * l.odds[at]
		}
	}
	return sum
}

// counts is the log-likelihood of the beats as counts, per second.
func (h hearing) counts(beats []float64) float64 {
	if len(beats) < fewestLead {
		return h.worst()
	}
	sum := 0.0
	for _, t := range beats {
		sum += h.beat.gain(t * h.fps)
	}
	nothing, seconds := h.beat.nothing(beats, h.fps)
	return nothing + sum/seconds
}

// ones is the log-likelihood of the best bars of 2, 3 or 4 beats, per second.
func (h hearing) ones(beats []float64) float64 {
	if len(beats) < fewestLead {
		return h.worst()
	}
	best := math.Inf(-1)
	for _, every := range bars {
		sum := make([]float64, every)
		for i, t := range beats {
			sum[i%every] += h.one.gain(t * h.fps)
		}
		best = max(best, slices.Max(sum))
	}
	nothing, seconds := h.one.nothing(beats, h.fps)
	return nothing + best/seconds
}

// worst is the least log-likelihood, per second.
func (h hearing) worst() float64 { return h.fps * math.Log(1-mostSure) }

func everySecond(x []float64, first int) []float64 {
	var out []float64
	for i := first; i < len(x); i += 2 {
		out = append(out, x[i])
	}
	return out
}

// usual is the median interval of a row of counts [s].
func usual(counts []float64) float64 {
	var d []float64
	for i := 1; i < len(counts); i++ {
		d = append(d, counts[i]-counts[i-1])
	}
	return dsp.Median(d)
}
