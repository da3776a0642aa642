package pulse

import "math"

// Beats is a decoded chain.
type Beats struct {
	Frames   []int   // first frame of each beat, increasing
	Position []int   // 1..Meter of each beat
	Log      float64 // log-likelihood of the whole chain
}

// Decode finds the likeliest beats. beat holds for each frame how likely a
// beat is there (0-1); bar, which may be nil, how likely the first beat of a
// bar is; spans the allowed periods, for each frame or one for all.
func (m Model) Decode(beat, bar []float64, spans ...Span) Beats {
	if len(beat) == 0 {
		return Beats{}
	}
	if bar == nil {
		m.Meter = 1
	}
	return newDecoder(m, beat, bar, spans).run()
}

func (d *decoder) run() Beats {
	for t := range d.n {
		d.step(t)
		if t >= d.rows && d.trail.due() {
			d.trail.settle(d.alive(t))
		}
	}
	return d.backtrack()
}

// decoder holds the scores of chains. The cell (t, b, τ) is the best chain
// with beat b of a bar beginning at frame t and lasting τ frames.
type decoder struct {
	Model
	n          int
	spans      []Span
	low, width int // smallest τ, number of τ
	trans      transitions
	on, off    [][]float64 // prefix sums of the log-likelihoods, per kind of beat
	rows       int         // frames whose scores are held: as many as a beat may last, and one
	score      []float32   // by cell, frames modulo rows
	trail      *trail
	arrive     []float64 // scratch: score of beats ending at a frame, by τ
	leave      []float64 // scratch: score of beats beginning there, by τ
}

const never = float32(-1e30)

func newDecoder(m Model, beat, bar []float64, spans []Span) *decoder {
	d := &decoder{Model: m, n: len(beat), spans: spans}
	low, high := math.MaxInt, 0
	for _, s := range spans {
		low, high = min(low, s.Min), max(high, s.Max)
	}
	d.low, d.width = low, high-low+1
	d.trans = m.transitions(low, high)
	d.on, d.off = d.prefixSums(beat, bar)
	d.rows = high + 1
	d.score = make([]float32, d.rows*m.Meter*d.width)
	d.trail = newTrail(m.Meter, low, d.width, d.n)
	d.arrive, d.leave = make([]float64, d.width), make([]float64, d.width)
	return d
}

// prefixSums prepares the observations: log a in the first part of a beat,
// log (1-a)/(Slots-1) in the rest, a the bar activation in the first beat of a
// bar and what is left of the beat activation in the others.
func (d *decoder) prefixSums(beat, bar []float64) (on, off [][]float64) {
	const least = 1e-5
	kinds := min(2, d.Meter)
	on, off = make([][]float64, kinds), make([][]float64, kinds)
	for k := range kinds {
		on[k], off[k] = make([]float64, d.n+1), make([]float64, d.n+1)
	}
	for i, a := range beat {
		one, other := a, a
		if bar != nil {
			one, other = bar[i], a-bar[i]
		}
		rest := math.Log(max(least, 1-a) / float64(d.Slots-1))
		for k, v := range [2]float64{one, other} {
			if k < kinds {
				on[k][i+1] = on[k][i] + math.Log(max(least, v))
				off[k][i+1] = off[k][i] + rest
			}
		}
	}
	return on, off
}

// kind of beat b: 0 for the first of a bar, 1 for the others.
func (d *decoder) kind(b int) int { return min(b, len(d.on)-1) }

// observe is the log-likelihood of the frames from..to of a beat of kind k
// that begins at frame t (which may be before the first) and lasts tau.
func (d *decoder) observe(k, t, tau int) float64 {
	split := min(max(t+(tau+d.Slots-1)/d.Slots, 0), d.n)
	from, to := max(t, 0), min(t+tau, d.n)
	return d.on[k][split] - d.on[k][from] + d.off[k][to] - d.off[k][split]
}

func (d *decoder) span(t int) Span {
	if len(d.spans) == 1 {
		return d.spans[0]
	}
	return d.spans[min(max(t, 0), len(d.spans)-1)]
}

// scores are those of beat b at frame t, by τ.
func (d *decoder) scores(t, b int) []float32 {
	at := (t%d.rows*d.Meter + b) * d.width
	return d.score[at : at+d.width]
}

func (d *decoder) step(t int) {
	span := d.span(t)
	from := d.trail.grow()
	for b := range d.Meter {
		best, bestTau := d.arriveAt(t, b)
		d.leaveFrom(best, bestTau, from[b*d.width:(b+1)*d.width])
		row := d.scores(t, b)
		for i, s := range d.leave {
			row[i] = never
			if tau := i + d.low; tau >= span.Min && tau <= span.Max {
				row[i] = float32(s + d.aimed(span, tau))
			}
		}
	}
}

// leaveFrom fills d.leave with the best score with which each period may
// follow those of d.arrive, and from with the period it follows. best and
// bestTau are the best that arrives; what arrives more than a jump below it
// leads to nothing better than a jump.
func (d *decoder) leaveFrom(best float64, bestTau int, from []uint16) {
	jump := best + d.Jump
	for i := range d.leave {
		d.leave[i], from[i] = jump, uint16(bestTau)
	}
	for i, a := range d.arrive {
		if a <= jump {
			continue
		}
		near := d.trans.near[i]
		for j, p := range near.logP {
			if to := near.to + j; a+p > d.leave[to] {
				d.leave[to], from[to] = a+p, uint16(i+d.low)
			}
		}
	}
}

// arriveAt fills d.arrive with the scores of beats of each period that end
// where beat b of frame t begins, and returns the best of them.
func (d *decoder) arriveAt(t, b int) (best float64, tau int) {
	best = float64(never)
	before := (b + d.Meter - 1) % d.Meter
	k := d.kind(before)
	start := -math.Log(float64(d.width))
	now := t % d.rows
	for i := range d.arrive {
		period := i + d.low
		d.arrive[i] = float64(never)
		prev := t - period
		if s := d.span(prev); period < s.Min || period > s.Max {
			continue
		}
		row := now - period // of the scores: no period is longer than there are rows
		if row < 0 {
			row += d.rows
		}
		if prev < 0 {
			d.arrive[i] = start + d.observe(k, prev, period)
		} else if s := d.score[(row*d.Meter+before)*d.width+i]; s > never {
			d.arrive[i] = float64(s) + d.observe(k, prev, period)
		}
		if d.arrive[i] > best {
			best, tau = d.arrive[i], period
		}
	}
	return best, tau
}

// alive are the cells that a chain may still go on from after frame t.
func (d *decoder) alive(t int) []cell {
	var all []cell
	for t0 := max(0, t-d.rows+2); t0 <= t; t0++ {
		for b := range d.Meter {
			for i, s := range d.scores(t0, b) {
				if c := (cell{t0, b, i + d.low}); s > never && t0+c.tau > t {
					all = append(all, c)
				}
			}
		}
	}
	return all
}

// backtrack finds the best beat that reaches past the end and follows its
// chain to the start.
func (d *decoder) backtrack() Beats {
	out := Beats{Log: math.Inf(-1)}
	var last cell
	for _, c := range d.alive(d.n - 1) {
		s := d.scores(c.t, c.b)[c.tau-d.low]
		if v := float64(s) + d.observe(d.kind(c.b), c.t, c.tau); v > out.Log {
			out.Log, last = v, c
		}
	}
	if math.IsInf(out.Log, -1) {
		return out
	}
	for _, c := range d.trail.to(last) {
		out.Frames = append(out.Frames, c.t)
		out.Position = append(out.Position, c.b+1)
	}
	return out
}
