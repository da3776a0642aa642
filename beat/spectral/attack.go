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
	last     [2]float64
	sum      float64
	n        int
	attack   *Attack
}

func newAttackMeter(channels int) *attackMeter {
	return &attackMeter{channels: channels, attack: &Attack{FPS: float64(Rate) / attackStep}}
}

func (m *attackMeter) write(samples []float64) {
	for i := 0; i < len(samples); i += m.channels {
		for c := range m.channels {
			d := samples[i+c] - m.last[c]
			m.last[c] = samples[i+c]
			m.sum += d * d
		}
		if m.n++; m.n == attackStep {
			m.attack.Energy = append(m.attack.Energy, float32(m.sum/float64(attackStep*m.channels)))
			m.sum, m.n = 0, 0
		}
	}
}

func (m *attackMeter) finish() *Attack { return m.attack }
