package bare

import (
	"math"
	"math/rand/v2"
)

// drum is one stroke.
type drum []float64

// kit is what the sounds of a song are.
type kit struct {
	kick, snare, hat, crash drum
	toms                    [3]drum
	bass, chord, lead       voice
	root                    int
}

// tom is the one for a share of a fill, 0-1: from high to low.
func (k kit) tom(share float64) drum { return k.toms[min(2, int(3*share))] }

// voice is a way to make a tone.
type voice struct {
	wave   int     // 0 sine, 1 saw, 2 square, 3 organ
	attack float64 // [s]
	decay  float64 // of its level [1/s]
	dull   float64 // share of each sample in the smoothing filter, 0-1
	gain   float64
}

func newKit(r *rand.Rand) kit {
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	k := kit{root: r.IntN(12)}
	k.kick = sweep(between(90, 180), between(40, 60), between(0.02, 0.05), between(0.1, 0.3), between(0.7, 1))
	rattle := noise(r, between(0.05, 0.16), between(0, 0.7), between(0.5, 0.9))
	k.snare = mixed(rattle, sweep(between(180, 260), 170, 0.02, 0.08, between(0.1, 0.5)))
	k.hat = noise(r, between(0.012, 0.05), between(0.8, 0.97), between(0.2, 0.5))
	k.crash = noise(r, between(0.35, 1.1), between(0.5, 0.95), between(0.3, 0.8))
	for i := range k.toms {
		f := between(180, 240) * math.Pow(0.75, float64(i))
		k.toms[i] = sweep(f*1.3, f, 0.05, between(0.12, 0.3), 0.8)
	}
	k.bass = voice{r.IntN(3), 0.004, between(0, 6), between(0.08, 0.3), between(0.5, 0.9)}
	k.chord = voice{r.IntN(4), pickAttack(r), between(0, 2.5), between(0.15, 0.9), between(0.15, 0.45)}
	k.lead = voice{r.IntN(4), 0.01, between(0, 4), between(0.3, 0.9), between(0.3, 0.7)}
	return k
}

func pickAttack(r *rand.Rand) float64 {
	if r.IntN(3) == 0 {
		return 0.08
	}
	return 0.005
}

// sweep is a sine that falls from one frequency to another [Hz].
func sweep(from, to, fall, decay, level float64) drum {
	out := make(drum, int(5*decay*Rate))
	phase := 0.0
	for i := range out {
		t := float64(i) / Rate
		phase += (to + (from-to)*math.Exp(-t/fall)) / Rate
		out[i] = level * math.Sin(2*math.Pi*phase) * math.Exp(-t/decay)
	}
	return out
}

// noise decays; bright 0-1 takes its low part away.
func noise(r *rand.Rand, decay, bright, level float64) drum {
	out := make(drum, int(5*decay*Rate))
	last := 0.0
	for i := range out {
		x := 2*r.Float64() - 1
		out[i] = level * (x - bright*last) * math.Exp(-float64(i)/Rate/decay)
		last = x
	}
	return out
}

func mixed(a, b drum) drum {
	if len(a) < len(b) {
		a, b = b, a
	}
	for i, v := range b {
		a[i] += v
	}
	return a
}

func (p *player) strike(d drum, at, level float64) {
	from := int(at * Rate)
	for i, v := range d {
		if from+i < len(p.out) {
			p.out[from+i] += level * v
		}
	}
}

// tone plays a note.
func (p *player) tone(v voice, at, length, key, level float64) {
	const release = 0.02
	f := 440 * math.Pow(2, (key-69)/12)
	from, n := int(at*Rate), int((length+release)*Rate)
	low, phase := 0.0, p.r.Float64()
	for i := range n {
		if from+i >= len(p.out) {
			return
		}
		t := float64(i) / Rate
		phase += f / Rate
		x := v.at(phase - math.Floor(phase))
		low += v.dull * (x - low)
		env := min(1, t/v.attack) * math.Exp(-v.decay*t) * min(1, (length+release-t)/release)
		p.out[from+i] += level * v.gain * env * low
	}
}

// at is the wave at a phase, 0-1.
func (v voice) at(phase float64) float64 {
	switch v.wave {
	case 1:
		return 2*phase - 1
	case 2:
		return math.Copysign(0.7, phase-0.5)
	case 3:
		return 0.5*math.Sin(2*math.Pi*phase) + 0.3*math.Sin(4*math.Pi*phase) + 0.2*math.Sin(8*math.Pi*phase)
	}
	return math.Sin(2 * math.Pi * phase)
}

// swell is noise that grows until a time [s] and stops.
func (p *player) swell(from, to float64) {
	last := 0.0
	for i := int(max(0, from) * Rate); i < int(to*Rate) && i < len(p.out); i++ {
		x := 2*p.r.Float64() - 1
		share := (float64(i)/Rate - from) / (to - from)
		p.out[i] += 0.5 * share * share * (x - 0.7*last)
		last = x
	}
}
