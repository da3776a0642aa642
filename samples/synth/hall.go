package synth

import "math"

// hall is a reverb: eight delay lines that feed each other through a matrix
// that loses nothing, damped as a room full of people is.
// Ref: Jot & Chaigne 1991, "Digital delay networks for designing artificial
// reverberators"; the matrix is a Householder reflection.
type hall struct {
	lines [8][]float64
	at    [8]int
	damp  [8]float64
	gain  [8]float64
	low   filter // keeps the bass out of the room
	low2  filter
}

// hallDelays are mutually prime-ish lengths [s], hallTime the time to fall by
// 60 dB [s].
var hallDelays = [8]float64{0.0297, 0.0371, 0.0411, 0.0437, 0.0533, 0.0619, 0.0683, 0.0797}

const hallTime = 1.5

func newHall(rate float64) *hall {
	h := new(hall)
	for i, d := range hallDelays {
		n := int(d * rate)
		h.lines[i] = make([]float64, n)
		h.gain[i] = math.Pow(10, -3*float64(n)/rate/hallTime)
	}
	h.low.tune(220, 0, rate)
	h.low2.tune(220, 0, rate)
	return h
}

// fill turns what was sent to the hall into what comes back from it.
func (h *hall) fill(b *buffer) {
	const dampen, level = 0.35, 1.1
	for i := range b.l {
		h.low.feed(float64(b.l[i]))
		h.low2.feed(float64(b.r[i]))
		in := [2]float64{h.low.high, h.low2.high}
		var out [8]float64
		total := 0.0
		for k := range h.lines {
			x := h.lines[k][h.at[k]]
			h.damp[k] += (1 - dampen) * (x - h.damp[k])
			out[k] = h.damp[k] * h.gain[k]
			total += out[k]
		}
		for k := range h.lines {
			h.lines[k][h.at[k]] = in[k%2] + out[k] - total/4
			if h.at[k]++; h.at[k] == len(h.lines[k]) {
				h.at[k] = 0
			}
		}
		b.l[i] = float32(level * (out[0] - out[2] + out[4] - out[6]) / 2)
		b.r[i] = float32(level * (out[1] - out[3] + out[5] - out[7]) / 2)
	}
}

// pingPong is an echo that goes from side to side every delay seconds, each
// time duller and at feedback times the loudness. b ends up with the echoes only.
func pingPong(b *buffer, delay, feedback float64) {
	n := int(delay * b.rate)
	if n <= 0 || n >= len(b.l) {
		b.clear()
		return
	}
	left, right := make([]float64, n), make([]float64, n)
	var dullL, dullR filter
	dullL.tune(3200, 0, b.rate)
	dullR.tune(3200, 0, b.rate)
	for i := range b.l {
		k := i % n
		outL, outR := left[k], right[k]
		in := float64(b.l[i]+b.r[i]) / 2
		dullL.feed(in + feedback*outR)
		dullR.feed(feedback * outL)
		left[k], right[k] = dullL.low, dullR.low
		b.l[i], b.r[i] = float32(outL), float32(outR/math.Sqrt(feedback))
	}
}
