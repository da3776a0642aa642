package synth

import (
	"math"

	"onphrase/beat/learn/score"
)

// wave is the kind of oscillator of a patch.
type wave int

const (
	saw wave = iota
	pulse
	triangle
	sine
	fm
	pluck
	organ
	waves int = iota
)

// patch is the timbre of a pitched part.
type patch struct {
	wave                            wave
	attack, decay, sustain, release float64 // [s], sustain 0-1
	cutoff, sweep, q                float64 // low-pass: octaves above the note, envelope [octaves]
	voices                          int
	detune                          float64 // between voices [semitones]
	width                           float64 // of a pulse
	ratio, index                    float64 // of frequency modulation
	vibrato                         float64 // [semitones]
	drive                           float64
	level                           float64
}

// newPatch draws a timbre that suits a part.
func newPatch(r score.Rand, part score.Part, sound score.Sound) patch {
	p := patch{
		wave: wave(r.IntN(waves)), attack: r.Between(0.001, 0.012), decay: r.Between(0.08, 0.9), sustain: r.Between(0, 0.9),
		release: r.Between(0.02, 0.2), cutoff: r.Between(1, 6), sweep: r.Between(0, 3), q: r.Between(0.6, 3), voices: 1,
		width: r.Between(0.1, 0.5), ratio: score.Pick(r, []float64{0.5, 1, 2, 3, 3.5, 7, 1.41}), index: r.Between(0.3, 5),
		level: 1,
	}
	if r.Chance(0.3) {
		p.voices, p.detune = 2+r.IntN(4), r.Between(0.03, 0.25)
	}
	if r.Chance(0.25) {
		p.vibrato = r.Between(0.05, 0.35)
	}
	switch part {
	case score.Bass:
		p.cutoff, p.voices, p.level = r.Between(0.6, 5), min(p.voices, 2), 1.1
	case score.Pad:
		p.attack, p.sustain, p.release, p.wave = r.Between(0.08, 0.9), 0.9, r.Between(0.2, 1),
			score.Pick(r, []wave{saw, pulse, triangle, organ, saw})
		p.voices, p.detune, p.level = 2, r.Between(0.05, 0.2), 0.5
	case score.Chord:
		p.level = 0.7
	case score.Lead:
		p.level = 0.8
	}
	switch sound {
	case score.Chip:
		p.wave, p.voices, p.cutoff, p.sweep = score.Pick(r, []wave{pulse, pulse, triangle, saw}), 1, 9, 0
		p.width = score.Pick(r, []float64{0.125, 0.25, 0.5})
		p.attack = 0.001
	case score.Heavy:
		if part == score.Chord || part == score.Lead {
			p.wave, p.drive, p.cutoff = score.Pick(r, []wave{saw, pluck}), r.Between(4, 30), r.Between(3, 5)
		}
	case score.Acoustic, score.Soft:
		if part == score.Chord || part == score.Arp || part == score.Bass {
			p.wave = score.Pick(r, []wave{pluck, pluck, fm, organ, triangle, sine})
		}
	}
	return p
}

// play adds a note to out.
func (p patch) play(r score.Rand, out []float32, n score.Note) {
	if p.wave == pluck {
		p.pluckString(r, out, n)
		return
	}
	from := seconds(n.At)
	total := seconds(n.Len + 4*p.release)
	f := 440 * math.Exp2((n.Key-69)/12)
	osc := make([]float64, p.voices) // phases
	inc := make([]float64, p.voices)
	for v := range osc {
		osc[v] = r.Float64()
		inc[v] = f * math.Exp2(p.detune*(float64(v)-float64(p.voices-1)/2)/12) / Rate
	}
	filter := newResonator(f*math.Exp2(p.cutoff), p.q)
	gain := n.Level * p.level * 0.35 / math.Sqrt(float64(p.voices))
	mod := 0.0
	for i := 0; i < total && from+i < len(out); i++ {
		t := float64(i) / Rate
		env := p.envelope(t, n.Len)
		if i%32 == 0 {
			filter.tune(f*math.Exp2(p.cutoff+p.sweep*math.Exp(-t/p.decay)), p.q)
			if p.vibrato > 0 {
				mod = math.Exp2(p.vibrato*min(1, t*4)*math.Sin(2*math.Pi*5.5*t)/12) - 1
			}
		}
		v := 0.0
		for k := range osc {
			d := inc[k] * (1 + mod)
			v += p.sample(osc[k], d, env)
			if osc[k] += d; osc[k] >= 1 {
				osc[k]--
			}
		}
		out[from+i] += float32(gain * env * filter.low(v))
	}
}

// envelope is attack, decay to sustain, and release after the note's length.
func (p patch) envelope(t, length float64) float64 {
	held := min(t, length)
	env := min(1, held/p.attack) * (p.sustain + (1-p.sustain)*math.Exp(-held/p.decay))
	if t > length {
		env *= math.Exp(-(t - length) / p.release)
	}
	return env
}

// sample is the oscillator at a phase (0-1) that moves by d a sample.
func (p patch) sample(x, d, env float64) float64 {
	switch p.wave {
	case saw:
		return 2*x - 1 - blep(x, d)
	case pulse:
		y := x + 1 - p.width
		if y >= 1 {
			y--
		}
		v := -1.0
		if x < p.width {
			v = 1
		}
		return v + blep(x, d) - blep(y, d)
	case triangle:
		return 4*math.Abs(x-0.5) - 1
	case fm:
		return math.Sin(2 * math.Pi * (x + p.index*env*env*math.Sin(2*math.Pi*p.ratio*x)/6))
	case organ:
		return 0.5*math.Sin(2*math.Pi*x) + 0.4*math.Sin(4*math.Pi*x) + 0.25*math.Sin(6*math.Pi*x) +
			0.15*math.Sin(16*math.Pi*x)
	}
	return math.Sin(2 * math.Pi * x)
}

// blep rounds the corner of a step at phase 0.
//
// Ref: Välimäki & Huovilainen 2007, "Antialiasing oscillators in subtractive
// synthesis", polynomial band-limited step.
func blep(x, d float64) float64 {
	if x < d {
		x /= d
		return x + x - x*x - 1
	}
	if x > 1-d {
		x = (x - 1) / d
		return x*x + x + x + 1
	}
	return 0
}

// pluckString adds a note of a plucked string.
//
// Ref: Karplus & Strong 1983, "Digital synthesis of plucked-string and drum
// timbres".
func (p patch) pluckString(r score.Rand, out []float32, n score.Note) {
	f := 440 * math.Exp2((n.Key-69)/12)
	period := max(2, int(Rate/f+0.5))
	string := make([]float64, period)
	bright := min(1, p.cutoff/5)
	low := 0.0
	for i := range string {
		low += (0.15 + 0.85*bright) * (r.Float64()*2 - 1 - low)
		string[i] = low
	}
	loss := math.Pow(0.001, 1/(f*(0.4+2.5*p.decay)))
	from, total := seconds(n.At), seconds(n.Len+3*p.release)
	gain := n.Level * p.level * 0.8
	for i := 0; i < total && from+i < len(out); i++ {
		k := i % period
		v := string[k]
		string[k] = loss * 0.5 * (v + string[(k+1)%period])
		env := 1.0
		if t := float64(i)/Rate - n.Len; t > 0 {
			env = math.Exp(-t / p.release)
		}
		out[from+i] += float32(gain * env * v)
	}
}
