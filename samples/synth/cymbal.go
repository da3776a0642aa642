package synth

import "math"

// metal are the ratios of six square waves whose clash sounds like a cymbal.
var metal = [...]float64{1, 1.342, 1.231, 1.67, 1.946, 2.53}

// alloy is what sets one cymbal apart from another.
type alloy struct {
	fall   float64 // length [s]
	cutoff float64 // of the high pass [Hz]
	hiss   float64 // noise against metal, 0-1
	ping   float64 // tone of the stick, 0-1
	wide   float64 // how different the two ears hear it, 0-1
}

var (
	hatAlloy     = alloy{fall: 0.07, cutoff: 7200, hiss: 0.5}
	openAlloy    = alloy{fall: 0.34, cutoff: 6600, hiss: 0.5, wide: 0.2}
	rideAlloy    = alloy{fall: 0.9, cutoff: 5200, hiss: 0.15, ping: 0.5, wide: 0.2}
	crashAlloy   = alloy{fall: 2.2, cutoff: 3200, hiss: 0.75, wide: 0.8}
	jingleAlloy  = alloy{fall: 0.13, cutoff: 5600, hiss: 0.2, wide: 0.2}
	crashOverdub = 1.37 // the crash's metal lies higher than the hats'
)

// strike plays a cymbal of the kit.
func (k kit) strike(a alloy, b *buffer, n note, rng *noise) {
	var left, right filter
	left.tune(a.cutoff, 0.1, b.rate)
	right.tune(a.cutoff, 0.1, b.rate)
	var tones [len(metal)]oscillator
	for i, ratio := range metal {
		tones[i] = oscillator{shape: pulse, step: 8 * k.hatTone * ratio / b.rate}
		if a.fall > 1 {
			tones[i].step *= crashOverdub
		}
		for tones[i].step > 0.4 {
			tones[i].step /= 2
		}
	}
	at, first := panned(n.pan), b.start(n)
	for i := range int(a.fall * b.rate) {
		t := float64(i) / b.rate
		clash := 0.0
		for j := range tones {
			clash += tones[j].next(0.5)
		}
		clash *= (1 - a.hiss) / 3
		shared := a.hiss * rng.next()
		other := shared*(1-a.wide) + a.wide*a.hiss*rng.next()
		left.feed(clash + shared)
		right.feed(clash + other)
		stick := a.ping * math.Sin(2*math.Pi*3130*t) * fall(t, 0.25)
		env := n.vel * fall(t, a.fall)
		b.add(first+i, at.l*env*(left.high+stick), at.r*env*(right.high+stick))
	}
}

// shake is a shaker: noise that swells before it falls.
func (k kit) shake(b *buffer, n note, rng *noise) {
	const swell, length = 0.012, 0.075 // [s]
	var f filter
	f.tune(6200, 0.3, b.rate)
	at, first := panned(n.pan), b.start(n)
	for i := range int(length * b.rate) {
		t := float64(i) / b.rate
		f.feed(rng.next())
		env := math.Min(1, t/swell) * fall(math.Max(0, t-swell), length)
		x := n.vel * env * (f.band + 0.4*f.high)
		b.add(first+i, at.l*x, at.r*x)
	}
}
