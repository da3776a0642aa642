package pulse

import "math"

// Model says which chains of beats are likely.
type Model struct {
	FPS   float64 // frames per second of the activation
	Meter int     // beats in a bar; used only with a bar activation, else 1 will do

	// Steadiness is the λ of p(τ'|τ) ∝ exp(-λ|τ'/τ - 1|), τ the period of a beat.
	Steadiness float64
	// Jump is the log-probability of a beat at which any tempo may follow.
	Jump float64
	// Spread is how far a period may be from the likeliest one of its span,
	// as a share of it (standard deviation).
	Spread float64
	// Slots is the part of a beat's positions in which its sound is expected:
	// the first of so many.
	Slots int
}

// Default is the model for activations at fps frames per second.
func Default(fps float64) Model {
	return Model{FPS: fps, Meter: 1, Steadiness: 100, Jump: -25, Spread: 0.01, Slots: 16}
}

// Span is the range of periods that a beat starting at a frame may have
// [frames].
type Span struct {
	Min, Max int
	Aim      float64 // the likeliest period, where one is known; else 0
}

// SpanOf converts a range of tempi [1/min] to one of periods.
func (m Model) SpanOf(minBPM, maxBPM float64) Span {
	return Span{
		Min: max(2, int(math.Floor(60*m.FPS/maxBPM))),
		Max: max(2, int(math.Ceil(60*m.FPS/minBPM))),
	}
}

// Around is the range of periods within a few spreads of the likeliest one
// [frames].
func (m Model) Around(period float64) Span {
	const reach = 3
	spread := m.spread(period)
	return Span{
		Min: max(2, int(math.Floor(period-reach*spread))),
		Max: max(2, int(math.Ceil(period+reach*spread))),
		Aim: period,
	}
}

// spread is the standard deviation of periods around a likely one: what the
// music may do, and the rounding to whole frames.
func (m Model) spread(period float64) float64 { return m.Spread*period + 0.5 }

// aimed is the log-probability of a period within its span.
func (m Model) aimed(s Span, period int) float64 {
	if s.Aim == 0 {
		return 0
	}
	d := (float64(period) - s.Aim) / m.spread(s.Aim)
	return -d * d / 2
}

// transitions holds log p(τ'|τ) for the periods near τ.
type transitions struct {
	near []nearby // by τ, from the shortest on
}

// nearby lists the periods to which τ may go.
type nearby struct {
	to   int // the first of them, from the shortest period on
	logP []float64
}

// prune leaves out transitions below this log-probability.
const prune = -8.0

func (m Model) transitions(min, max int) transitions {
	t := transitions{near: make([]nearby, max-min+1)}
	for a := min; a <= max; a++ {
		sum := 0.0
		n := nearby{to: -1}
		for b := min; b <= max; b++ {
			p := -m.Steadiness * math.Abs(float64(b)/float64(a)-1)
			sum += math.Exp(p)
			if p < prune {
				continue
			}
			if n.to < 0 {
				n.to = b - min
			}
			n.logP = append(n.logP, p)
		}
		for i := range n.logP {
			n.logP[i] -= math.Log(sum)
		}
		t.near[a-min] = n
	}
	return t
}
