package synth

import "math"

// rise is a riser: noise and a tone that climb and swell until the note ends.
func rise(b *buffer, n note, rng *noise) {
	var left, right filter
	tone := oscillator{shape: saw}
	first, length := b.start(n), int(n.dur*b.rate)
	for i := range length {
		far := float64(i) / float64(length)
		if i%tuneEvery == 0 {
			left.tune(300*math.Exp2(4.6*far), 0.55, b.rate)
			right.tune(330*math.Exp2(4.6*far), 0.55, b.rate)
			tone.step = hertz(n.pitch+24*far*far) / b.rate
		}
		t := 0.25 * tone.next(0) * far
		left.feed(0.7*rng.next() + t)
		right.feed(0.7*rng.next() + t)
		env := n.vel * far * far * math.Min(1, (1-far)*n.dur/0.02)
		b.add(first+i, env*left.band, env*right.band)
	}
}

// boom is the landing after a riser: a deep stroke and noise that sinks.
func boom(b *buffer, n note, rng *noise) {
	const length = 2.4 // [s]
	var left, right filter
	first, phase := b.start(n), 0.0
	for i := range int(length * b.rate) {
		t := float64(i) / b.rate
		if i%tuneEvery == 0 {
			left.tune(5000*math.Exp(-t/0.5)+120, 0.2, b.rate)
			right.tune(5600*math.Exp(-t/0.5)+120, 0.2, b.rate)
		}
		phase += (38 + 40*math.Exp(-t/0.1)) / b.rate
		deep := 0.8 * math.Sin(2*math.Pi*phase) * fall(t, 1.4)
		left.feed(rng.next())
		right.feed(rng.next())
		env := n.vel * fall(t, length)
		b.add(first+i, env*(deep+0.4*left.low), env*(deep+0.4*right.low))
	}
}

// breathe is wind: noise that comes and goes slowly, for the whole note.
func breathe(b *buffer, n note, rng *noise) {
	var left, right filter
	first, length := b.start(n), int(n.dur*b.rate)
	for i := range length {
		t, far := float64(i)/b.rate, float64(i)/float64(length)
		if i%tuneEvery == 0 {
			left.tune(700*math.Exp2(1.2*math.Sin(0.7*t)), 0.4, b.rate)
			right.tune(800*math.Exp2(1.2*math.Sin(0.55*t+1)), 0.4, b.rate)
		}
		left.feed(rng.next())
		right.feed(rng.next())
		env := n.vel * math.Min(1, 6*far) * math.Min(1, 6*(1-far))
		b.add(first+i, env*left.band, env*right.band)
	}
}
