package synth

import "math"

// tuneEvery is how often filters and vibrato are set anew [samples].
const tuneEvery = 16

// play sounds one note of a patch.
func (p patch) play(b *buffer, n note, rng *noise) {
	oscs, places := p.oscillators(b, n, rng)
	sub := oscillator{shape: bell, step: hertz(n.pitch-12) / b.rate}
	var left, right filter
	first := b.start(n)
	length := int((n.dur + p.release) * b.rate)
	gain := n.vel / math.Sqrt(float64(p.unison))
	at := panned(n.pan)
	for i := range length {
		t := float64(i) / b.rate
		if i%tuneEvery == 0 {
			cutoff := p.cutoff * math.Exp2(p.open*n.vel*math.Exp(-t/math.Max(p.close, 1e-3)))
			left.tune(cutoff, p.ring, b.rate)
			right.tune(cutoff, p.ring, b.rate)
			p.shake(oscs, n, t, b.rate)
		}
		bend := p.bend
		if p.shape == bell {
			bend *= fall(t, 3*p.decay)
		}
		l, r := 0.0, 0.0
		for k := range oscs {
			x := oscs[k].next(bend)
			l += x * places[k].l
			r += x * places[k].r
		}
		s := p.sub * math.Sqrt2 * sub.next(0)
		left.feed(l + s)
		right.feed(r + s)
		env := gain * p.envelope(t, n.dur)
		b.add(first+i, at.l*env*p.saturate(left.low), at.r*env*p.saturate(right.low))
	}
}

// oscillators tunes the unison of a note, each at a phase of its own.
func (p patch) oscillators(b *buffer, n note, rng *noise) ([]oscillator, []place) {
	oscs := make([]oscillator, p.unison)
	places := make([]place, p.unison)
	for k := range oscs {
		phase := 0.0
		if p.unison > 1 {
			phase = (rng.next() + 1) / 2
		}
		oscs[k] = oscillator{shape: p.shape, phase: phase, ratio: p.ratio}
		off := p.offset(k)
		places[k] = panned(p.width * 2 * off)
		oscs[k].step = hertz(n.pitch+p.spread*off) / b.rate
	}
	return oscs, places
}

// offset is where oscillator k stands in the unison, -0.5 to 0.5.
func (p patch) offset(k int) float64 {
	if p.unison == 1 {
		return 0
	}
	return float64(k)/float64(p.unison-1) - 0.5
}

// shake applies the vibrato, which comes in once a note has been held a little.
func (p patch) shake(oscs []oscillator, n note, t, rate float64) {
	if p.vibrato == 0 {
		return
	}
	const speed, delay = 5.3, 0.25 // [Hz], [s]
	depth := p.vibrato * math.Min(1, math.Max(0, (t-delay)/delay))
	bend := depth * math.Sin(2*math.Pi*speed*t)
	for k := range oscs {
		oscs[k].step = hertz(n.pitch+p.spread*p.offset(k)+bend) / rate
	}
}

// envelope is the loudness t seconds into a note let go after dur.
func (p patch) envelope(t, dur float64) float64 {
	level := func(t float64) float64 {
		if t < p.attack {
			return t / p.attack
		}
		return p.hold + (1-p.hold)*fall(t-p.attack, 3*p.decay)
	}
	if t < dur {
		return level(t)
	}
	gone := (t - dur) / p.release
	return level(dur) * math.Max(0, 1-gone) * math.Max(0, 1-gone)
}

// saturate bends loud samples over, which adds overtones.
func (p patch) saturate(x float64) float64 {
	if p.drive == 0 {
		return x
	}
	return math.Tanh(p.drive*x) / math.Tanh(p.drive)
}
