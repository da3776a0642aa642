package synth

import "math"

// kit is the tuning of the drums; every song has its own.
type kit struct {
	kickPitch float64 // where the skin comes to rest [Hz]
	kickFall  float64 // length [s]
	snareTone float64 // [Hz]
	snareFall float64 // [s]
	hatTone   float64 // [Hz]
	tomTone   float64 // of the middle tom [Hz]
}

// newKit tunes a kit by chance, within what sounds like drums.
func newKit(rng *noise) kit {
	vary := func(mid, part float64) float64 { return mid * (1 + part*rng.next()) }
	return kit{
		kickPitch: vary(50, 0.1),
		kickFall:  vary(0.34, 0.2),
		snareTone: vary(190, 0.12),
		snareFall: vary(0.2, 0.25),
		hatTone:   vary(410, 0.12),
		tomTone:   vary(120, 0.1),
	}
}

// kick is a falling sine with a click of the beater in front.
func (k kit) kick(b *buffer, n note, rng *noise) {
	const drop, dropTime, beater = 210, 0.017, 0.006 // [Hz], [s], [s]
	first, phase := b.start(n), 0.0
	for i := range int(k.kickFall * b.rate) {
		t := float64(i) / b.rate
		phase += (k.kickPitch + drop*math.Exp(-t/dropTime)) / b.rate
		x := math.Tanh(1.8*math.Sin(2*math.Pi*phase)) * fall(t, k.kickFall*1.4)
		x += 0.5 * rng.next() * fall(t, beater)
		x *= math.Min(1, (k.kickFall-t)/0.01)
		b.add(first+i, n.vel*x, n.vel*x)
	}
}

// snare is two tones of the skin under the hiss of the wires.
func (k kit) snare(b *buffer, n note, rng *noise) {
	var wires filter
	wires.tune(1800, 0.1, b.rate)
	at, first := panned(n.pan), b.start(n)
	for i := range int(k.snareFall * 1.3 * b.rate) {
		t := float64(i) / b.rate
		w := 2 * math.Pi * t * k.snareTone
		skin := (math.Sin(w*(1+0.5*math.Exp(-t/0.01))) + 0.6*math.Sin(1.78*w)) * fall(t, 0.13)
		wires.feed(rng.next())
		hiss := (wires.high + 0.5*wires.band) * fall(t, k.snareFall*1.3)
		x := n.vel * math.Tanh(0.7*skin+0.9*n.vel*hiss)
		b.add(first+i, at.l*x, at.r*x)
	}
}

// clap is several hands, not quite together.
func (k kit) clap(b *buffer, n note, rng *noise) {
	const hands, apart, tail = 3, 0.011, 0.19 // [], [s], [s]
	var left, right filter
	left.tune(1150, 0.45, b.rate)
	right.tune(1300, 0.45, b.rate)
	first := b.start(n)
	for i := range int(0.25 * b.rate) {
		t := float64(i) / b.rate
		env := fall(t, 0.02)
		for h := 1.0; h < hands; h++ {
			if late := t - h*apart; late >= 0 {
				env = math.Max(env, fall(late, 0.02))
			}
		}
		if late := t - hands*apart; late >= 0 {
			env = math.Max(env, 0.6*fall(late, tail))
		}
		x := rng.next()
		left.feed(x)
		right.feed(0.7*x + 0.5*rng.next())
		b.add(first+i, n.vel*env*(left.band+0.25*left.high), n.vel*env*(right.band+0.25*right.high))
	}
}

// rim is a short knock of the stick.
func (k kit) rim(b *buffer, n note, rng *noise) {
	at, first := panned(n.pan), b.start(n)
	for i := range int(0.06 * b.rate) {
		t := float64(i) / b.rate
		x := (math.Sin(2*math.Pi*1720*t) + 0.6*math.Sin(2*math.Pi*2790*t)) * fall(t, 0.05)
		x = n.vel * (x + 0.3*rng.next()*fall(t, 0.01))
		b.add(first+i, at.l*x, at.r*x)
	}
}

// tom is a falling sine at the note's pitch above the middle tom.
func (k kit) tom(b *buffer, n note, rng *noise) {
	at, first, phase := panned(n.pan), b.start(n), 0.0
	tone := k.tomTone * math.Exp2(n.pitch/12)
	for i := range int(0.36 * b.rate) {
		t := float64(i) / b.rate
		phase += tone * (1 + 0.7*math.Exp(-t/0.03)) / b.rate
		x := math.Sin(2*math.Pi*phase)*fall(t, 0.36) + 0.2*rng.next()*fall(t, 0.02)
		b.add(first+i, at.l*n.vel*x, at.r*n.vel*x)
	}
}
