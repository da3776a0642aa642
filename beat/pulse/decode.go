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
	d := newDecoder(m, beat, bar, spans)
	for t := range d.n {
		d.step(t)
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
	score      []float32   // by cell
	from       []uint16    // period of the beat before, by cell; 0 at the start of a chain
	arrive     []float64   // scratch: score of beats ending at a frame, by τ
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
	d.score = make([]float32, d.n*m.Meter*d.width)
	d.from = make([]uint16, len(d.score))
	d.arrive = make([]float64, d.width)
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

func (d *decoder) cell(t, b, tau int) int { return (t*d.Meter+b)*d.width + tau - d.low }

func (d *decoder) step(t int) {
	span := d.span(t)
	for b := range d.Meter {
		best, bestTau := d.arriveAt(t, b)
		row := d.score[d.cell(t, b, d.low) : d.cell(t, b, d.low)+d.width]
		for i := range row {
			row[i] = never
			tau := i + d.low
			if tau < span.Min || tau > span.Max {
				continue
			}
			score, from := best+d.Jump, bestTau
			near := d.trans.near[i]
			for j, p := range near.logP {
				if s := d.arrive[near.from-d.low+j] + p; s > score {
					score, from = s, near.from+j
				}
			}
			row[i] = float32(score + d.aimed(span, tau))
			d.from[d.cell(t, b, tau)] = uint16(from)
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
	for i := range d.arrive {
		period := i + d.low
		d.arrive[i] = float64(never)
		prev := t - period
		if s := d.span(prev); period < s.Min || period > s.Max {
			continue
		}
		if prev < 0 {
			d.arrive[i] = start + d.observe(k, prev, period)
		} else if s := d.score[d.cell(prev, before, period)]; s > never {
			d.arrive[i] = float64(s) + d.observe(k, prev, period)
		}
		if d.arrive[i] > best {
			best, tau = d.arrive[i], period
		}
	}
	return best, tau
}

// backtrack finds the best beat that reaches past the end and follows its
// chain to the start.
func (d *decoder) backtrack() Beats {
	out := Beats{Log: math.Inf(-1)}
	t, b, tau := -1, 0, 0
	for t0 := max(0, d.n-d.low-d.width); t0 < d.n; t0++ {
		for b0 := range d.Meter {
			for i := range d.width {
				period := i + d.low
				s := d.score[d.cell(t0, b0, period)]
				if t0+period < d.n || s <= never {
					continue
				}
				if v := float64(s) + d.observe(d.kind(b0), t0, period); v > out.Log {
					out.Log, t, b, tau = v, t0, b0, period
				}
			}
		}
	}
	for t >= 0 {
		out.Frames = append(out.Frames, t)
		out.Position = append(out.Position, b+1)
		tau = int(d.from[d.cell(t, b, tau)])
		t -= tau
		b = (b + d.Meter - 1) % d.Meter
	}
	reverse(out.Frames)
	reverse(out.Position)
	return out
}

func reverse(x []int) {
	for i, j := 0, len(x)-1; i < j; i, j = i+1, j-1 {
		x[i], x[j] = x[j], x[i]
	}
}
