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
	// Slots is the part of a beat's positions in which its sound is expected:
	// the first of so many.
	Slots int
}

// Default is the model for activations at fps frames per second.
func Default(fps float64) Model {
	return Model{FPS: fps, Meter: 1, Steadiness: 100, Jump: -25, Slots: 16}
}

// Span is the range of periods that a beat starting at a frame may have
// [frames].
type Span struct{ Min, Max int }

// SpanOf converts a range of tempi [1/min] to one of periods.
func (m Model) SpanOf(minBPM, maxBPM float64) Span {
	return Span{
		Min: max(2, int(math.Floor(60*m.FPS/maxBPM))),
		Max: max(2, int(math.Ceil(60*m.FPS/minBPM))),
	}
}

// transitions holds log p(τ'|τ) for the periods near τ.
type transitions struct {
	min  int
	near []nearby // by τ - min
}

// nearby lists the periods from which τ' may come.
type nearby struct {
	from int // first τ
	logP []float64
}

// prune leaves out transitions below this log-probability.
const prune = -8.0

func (m Model) transitions(min, max int) transitions {
	t := transitions{min: min, near: make([]nearby, max-min+1)}
	norm := make([]float64, max-min+1)
	for a := min; a <= max; a++ {
		for b := min; b <= max; b++ {
			norm[a-min] += math.Exp(-m.Steadiness * math.Abs(float64(b)/float64(a)-1))
		}
		norm[a-min] = math.Log(norm[a-min])
	}
	for b := min; b <= max; b++ {
		n := nearby{from: -1}
		for a := min; a <= max; a++ {
			p := -m.Steadiness * math.Abs(float64(b)/float64(a)-1)
			if p < prune {
				continue
			}
			if n.from < 0 {
				n.from = a
			}
			n.logP = append(n.logP, p-norm[a-min])
		}
		t.near[b-min] = n
	}
	return t
}
