package loudness

import "math"

// Ref: ITU-R BS.1770-4, annex 1.
const (
	hopsPerSecond = 10     // blocks begin every 100 ms
	hopsPerBlock  = 4      // and last 400 ms
	offset        = -0.691 // takes the K filter's gain at 1 kHz off again [dB]
	absoluteGate  = -70.0  // blocks below are silence [LUFS]
	relativeGate  = -10.0  // blocks below the rest by this are left out [LU]
)

// Meter measures the loudness of a stream, as a whole and as it goes on. It
// keeps two numbers for every 100 ms.
type Meter struct {
	rate    int
	filters []kFilter // one for each channel
	hops    []hop
	from    int // where the running hop began [samples per channel since the start]
	at      int // [samples per channel since the start]
	end     int // where it will end [samples per channel since the start]
}

// hop is the power of 100 ms.
type hop struct {
	squares float64 // sum over all channels
	samples int     // per channel
}

// NewMeter returns a meter for samples at a rate of 4000 Hz or more in 1 or 2
// channels. One channel counts once, as the standard has it; played by two
// loudspeakers it is 3 LU louder than it reads.
func NewMeter(rate, channels int) *Meter {
	m := &Meter{rate: rate, filters: make([]kFilter, channels), end: rate / hopsPerSecond}
	for i := range m.filters {
		m.filters[i] = newKFilter(rate)
	}
	return m
}

// Write takes the next samples, channels interleaved, full scale at 1. Their
// number is a multiple of the channels.
func (m *Meter) Write(samples []float32) {
	channels := len(m.filters)
	for len(samples) > 0 {
		n := min(m.end-m.at, len(samples)/channels)
		for ch := range m.filters {
			m.filters[ch].write(samples[ch:n*channels], channels)
		}
		samples = samples[n*channels:]
		m.at += n
		if m.at == m.end {
			m.endHop()
		}
	}
}

// running is the hop that is being filled.
func (m *Meter) running() hop {
	h := hop{samples: m.at - m.from}
	for ch := range m.filters {
		h.squares += m.filters[ch].squares
	}
	return h
}

// endHop closes the running hop.
func (m *Meter) endHop() {
	m.hops = append(m.hops, m.running())
	m.from = m.at
	m.end = (len(m.hops) + 1) * m.rate / hopsPerSecond
	for ch := range m.filters {
		m.filters[ch].squares = 0
		m.filters[ch].settle()
	}
}

// power is the mean square of a run of hops, channels added.
func power(hops []hop) float64 {
	var all hop
	for _, h := range hops {
		all.squares += h.squares
		all.samples += h.samples
	}
	return all.squares / float64(max(1, all.samples))
}

// Powers is the mean square of every step [s] of what was written so far, after
// the K filter, channels added; of the last one what there is of it. A step is
// a whole number of tenths of a second.
func (m *Meter) Powers(step float64) []float64 {
	hops := m.hops
	if m.at > m.from {
		hops = append(hops[:len(hops):len(hops)], m.running())
	}
	size := max(1, int(math.Round(step*hopsPerSecond)))
	var out []float64
	for i := 0; i < len(hops); i += size {
		out = append(out, power(hops[i:min(i+size, len(hops))]))
	}
	return out
}

// Integrated is the loudness of all that was written so far [LUFS]. It reports
// false where there is none: less than 400 ms, or nothing but silence.
func (m *Meter) Integrated() (lufs float64, ok bool) {
	sounding, ok := m.above(absoluteGate)
	if !ok {
		return 0, false
	}
	return m.above(max(absoluteGate, sounding+relativeGate))
}

// above is the loudness of the blocks that are louder than a gate [LUFS].
func (m *Meter) above(gate float64) (lufs float64, ok bool) {
	threshold := math.Pow(10, (gate-offset)/10)
	sum, n := 0.0, 0
	for end := hopsPerBlock; end <= len(m.hops); end++ {
		if p := power(m.hops[end-hopsPerBlock : end]); p > threshold {
			sum += p
			n++
		}
	}
	if n == 0 {
		return 0, false
	}
	return offset + 10*math.Log10(sum/float64(n)), true
}
