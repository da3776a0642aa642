package spectral

// Attack is the energy of the sound in short steps, the high frequencies
// brought forward: where a hit begins, it leaps.
type Attack struct {
	FPS    float64   // steps per second; step i covers i/FPS to (i+1)/FPS [s]
	Energy []float32 // mean square
}

const attackStep = 64 // [samples], 2.9 ms

// attackMeter measures the first difference of the sound, which lifts the
// click of a hit above the hum of what sounds on.
type attackMeter struct {
	channels int
	sum      float64
	left     int // values until the running step is full
	attack   *Attack
}

func newAttackMeter(channels int) *attackMeter {
	return &attackMeter{channels: channels, left: attackStep * channels, attack: &Attack{FPS: float64(Rate) / attackStep}}
}

// write takes the next samples; the first of each channel was there before.
func (m *attackMeter) write(samples []float64) {
	for len(samples) > m.channels {
		n := min(m.left, len(samples)-m.channels)
		m.sum = addSteps(m.sum, samples[:n], samples[m.channels:])
		samples = samples[n:]
		if m.left -= n; m.left == 0 {
			m.left = attackStep * m.channels
			m.attack.Energy = append(m.attack.Energy, float32(m.sum/float64(m.left)))
			m.sum = 0
		}
	}
}

// addSteps adds the squares of the steps from before to after.
func addSteps(sum float64, before, after []float64) float64 {
	after = after[:len(before)]
	for i, v := range before {
		d := after[i] - v
		sum += d * d
	}
	return sum
}
