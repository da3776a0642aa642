// Package synth turns the notes of a song into sound: drums, basses, chords,
// leads and a voice-like singer, with timbres drawn anew for every song.
package synth

import (
	"math"

	"onphrase/beat/learn/score"
)

// Rate is the sample rate of everything here [Hz].
const Rate = 22050

// drumKit is one sound for every drum, and how much its hits differ.
type drumKit [score.Bass][][]float32

func newDrumKit(r score.Rand, sound score.Sound) *drumKit {
	k := new(drumKit)
	for p := range score.Bass {
		make := drumMaker(r, p, sound)
		takes := 1
		if sound == score.Acoustic || sound == score.Heavy {
			takes = 3
		}
		for range takes {
			k[p] = append(k[p], make())
		}
	}
	return k
}

// drumMaker fixes the timbre of a drum; each call renders one take of it.
func drumMaker(r score.Rand, p score.Part, sound score.Sound) func() []float32 {
	if sound == score.Chip && r.Chance(0.8) {
		return chipDrum(r, p)
	}
	switch p {
	case score.Kick:
		return kick(r, sound)
	case score.Snare:
		return snare(r)
	case score.Clap:
		return clap(r)
	case score.Rim:
		return block(r, r.Between(350, 1900), r.Between(0.008, 0.03))
	case score.Bell:
		return block(r, r.Between(500, 2600), r.Between(0.03, 0.2))
	case score.Hat:
		return cymbal(r, r.Between(0.012, 0.06), 0)
	case score.OpenHat:
		return cymbal(r, r.Between(0.1, 0.4), 0)
	case score.Ride:
		return cymbal(r, r.Between(0.25, 0.9), r.Between(0.1, 0.5))
	case score.Crash:
		return cymbal(r, r.Between(0.5, 1.6), 0)
	case score.Tom:
		return sweep(r, r.Between(75, 210), r.Between(1.1, 1.8), r.Between(0.12, 0.4))
	case score.Conga:
		return sweep(r, r.Between(170, 420), r.Between(1, 1.2), r.Between(0.05, 0.2))
	}
	return shaker(r)
}

func seconds(s float64) int { return int(s * Rate) }

// kick is a falling sine with a click.
func kick(r score.Rand, sound score.Sound) func() []float32 {
	low, high := r.Between(38, 68), r.Between(110, 420)
	fall, decay, click, drive := r.Between(0.008, 0.05), r.Between(0.08, 0.35), r.Between(0, 0.7), r.Between(0.8, 4)
	if sound == score.Electronic && r.Chance(0.25) {
		decay = r.Between(0.35, 0.9) // a boom that rings on
	}
	if sound == score.Acoustic || sound == score.Heavy {
		low, high, decay, click = r.Between(48, 85), r.Between(80, 160), r.Between(0.05, 0.16), r.Between(0.2, 1)
	}
	tone := r.Between(0.05, 0.5)
	return func() []float32 {
		out := make([]float32, seconds(min(1.6, decay*5)))
		phase, noise := 0.0, 0.0
		for i := range out {
			t := float64(i) / Rate
			phase += 2 * math.Pi * (low + (high-low)*math.Exp(-t/fall)) / Rate
			noise += tone * (r.Float64()*2 - 1 - noise)
			v := math.Sin(phase)*math.Exp(-t/decay) + click*noise*math.Exp(-t/0.004)
			out[i] = float32(math.Tanh(drive*v) / math.Tanh(drive))
		}
		return out
	}
}

// snare is two drum-head modes and rattling noise.
func snare(r score.Rand) func() []float32 {
	f, ratio, body := r.Between(150, 340), r.Between(1.4, 1.9), r.Between(0.03, 0.14)
	rattle, share, cut := r.Between(0.04, 0.26), r.Between(0.3, 1), r.Between(0.02, 0.4)
	return func() []float32 {
		out := make([]float32, seconds(max(body, rattle)*4))
		low := 0.0
		for i := range out {
			t := float64(i) / Rate
			n := r.Float64()*2 - 1
			low += cut * (n - low)
			head := math.Sin(2*math.Pi*f*t) + 0.6*math.Sin(2*math.Pi*f*ratio*t)
			out[i] = float32(0.5*head*math.Exp(-t/body)*(1.2-share) + share*(n-low)*math.Exp(-t/rattle))
		}
		return out
	}
}

// clap is a few bursts of noise and a tail.
func clap(r score.Rand) func() []float32 {
	bursts, gap, tail := 2+r.IntN(4), r.Between(0.006, 0.014), r.Between(0.04, 0.25)
	f, q := r.Between(700, 2200), r.Between(0.7, 2.5)
	return func() []float32 {
		out := make([]float32, seconds(float64(bursts)*gap+tail*4))
		b := newResonator(f, q)
		for i := range out {
			t := float64(i) / Rate
			env := 0.0
			for k := range bursts {
				d := tail
				if k < bursts-1 {
					d = 0.004
				}
				if dt := t - float64(k)*gap; dt >= 0 {
					env = max(env, math.Exp(-dt/d))
				}
			}
			out[i] = float32(1.6 * env * b.band(r.Float64()*2-1))
		}
		return out
	}
}

// cymbal mixes noise with six clanging squares; ping adds the bell of a ride.
func cymbal(r score.Rand, decay, ping float64) func() []float32 {
	metal, base := r.Between(0, 0.8), r.Between(280, 620)
	high := r.Between(2500, 7500)
	ratio := [6]float64{1, 1.34, 1.48, 1.66, 1.93, 2.52}
	for i := range ratio {
		ratio[i] *= r.Between(0.95, 1.05)
	}
	bell := r.Between(900, 3200)
	return func() []float32 {
		out := make([]float32, seconds(min(2.5, decay*4.5)))
		h := newResonator(high, 0.7)
		for i := range out {
			t := float64(i) / Rate
			v := (1 - metal) * (r.Float64()*2 - 1)
			for _, k := range ratio {
				v += metal * 0.25 * math.Copysign(1, math.Sin(2*math.Pi*base*k*3*t))
			}
			v = h.high(v) * math.Exp(-t/decay)
			out[i] = float32(0.6*v + ping*math.Sin(2*math.Pi*bell*t)*math.Exp(-t/(decay*0.4)))
		}
		return out
	}
}

// sweep is a falling tone: toms and congas.
func sweep(r score.Rand, f, rise, decay float64) func() []float32 {
	slap := r.Between(0, 0.5)
	return func() []float32 {
		out := make([]float32, seconds(decay*4.5))
		phase := 0.0
		f := f * r.Between(0.8, 1.25)
		for i := range out {
			t := float64(i) / Rate
			phase += 2 * math.Pi * f * (1 + (rise-1)*math.Exp(-t/0.03)) / Rate
			out[i] = float32(math.Sin(phase)*math.Exp(-t/decay) + slap*(r.Float64()*2-1)*math.Exp(-t/0.006))
		}
		return out
	}
}

// block is a short ringing tone: rim, clave, cow bell.
func block(r score.Rand, f, decay float64) func() []float32 {
	second, mix := r.Between(1.3, 1.7), r.Between(0, 1)
	return func() []float32 {
		out := make([]float32, seconds(decay*5))
		for i := range out {
			t := float64(i) / Rate
			v := math.Sin(2*math.Pi*f*t) + mix*math.Sin(2*math.Pi*f*second*t)
			out[i] = float32(0.6 * v * math.Exp(-t/decay))
		}
		return out
	}
}

// shaker is noise that swells before it stops.
func shaker(r score.Rand) func() []float32 {
	rise, decay, f := r.Between(0.004, 0.03), r.Between(0.015, 0.06), r.Between(3500, 8000)
	return func() []float32 {
		out := make([]float32, seconds(rise+decay*4))
		b := newResonator(f, 0.8)
		for i := range out {
			t := float64(i) / Rate
			env := min(1, t/rise)
			if t > rise {
				env = math.Exp(-(t - rise) / decay)
			}
			out[i] = float32(0.8 * env * b.high(r.Float64()*2-1))
		}
		return out
	}
}

// chipDrum has the drums of old sound chips: stepped noise and square sweeps.
func chipDrum(r score.Rand, p score.Part) func() []float32 {
	decay := map[score.Part]float64{score.Kick: 0.08, score.Snare: 0.1, score.Clap: 0.1, score.Hat: 0.025,
		score.OpenHat: 0.12, score.Crash: 0.5, score.Tom: 0.12}[p]
	if decay == 0 {
		decay = 0.04
	}
	decay *= r.Between(0.6, 1.7)
	hold := 1 + r.IntN(6)
	tonal := p == score.Kick || p == score.Tom
	f := r.Between(120, 420)
	return func() []float32 {
		out := make([]float32, seconds(decay*4))
		phase, v := 0.0, 0.0
		for i := range out {
			t := float64(i) / Rate
			env := math.Floor(15*math.Exp(-t/decay)+0.5) / 15
			if tonal {
				phase += f * math.Exp(-t/0.05) / Rate
				v = math.Copysign(1, math.Sin(2*math.Pi*phase))
			} else if i%hold == 0 {
				v = math.Copysign(1, r.Float64()-0.5)
			}
			out[i] = float32(0.6 * env * v)
		}
		return out
	}
}
