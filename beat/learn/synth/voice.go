package synth

import (
	"math"

	"onphrase/beat/learn/score"
)

// vowels are the first three formants of five vowels [Hz].
//
// Ref: Peterson & Barney 1952, "Control methods used in a study of the vowels"
// (rounded; from memory).
var vowels = [][3]float64{{730, 1090, 2440}, {530, 1840, 2480}, {270, 2290, 3010}, {570, 840, 2410}, {300, 870, 2240}}

// singer is a voice-like lead: a buzzing source through moving formants, with
// glides, vibrato and hissing consonants before the vowels.
type singer struct {
	size, vibrato, rate, breath, glide, level float64
}

func newSinger(r score.Rand) singer {
	return singer{r.Between(0.9, 1.25), r.Between(0.1, 0.5), r.Between(4.5, 6.5), r.Between(0.01, 0.12),
		r.Between(0.02, 0.12), r.Between(0.6, 1.4)}
}

// sing adds the notes, in order of time, to out.
func (s singer) sing(r score.Rand, out []float32, notes []score.Note) {
	key := 0.0
	var f [3]*resonator
	for i := range f {
		f[i] = newResonator(500, 8)
	}
	phase := 0.0
	for i, n := range notes {
		if i+1 < len(notes) && n.At+n.Len > notes[i+1].At {
			n.Len = max(0.05, notes[i+1].At-n.At)
		}
		if key == 0 || r.Chance(0.3) {
			key = n.Key
		}
		if r.Chance(0.6) {
			s.consonant(r, out, n)
		}
		phase, key = s.vowel(r, out, n, f, phase, key)
	}
}

// vowel adds one note and returns the phase and pitch that it ends with.
func (s singer) vowel(r score.Rand, out []float32, n score.Note, f [3]*resonator, phase, key float64) (float64,
	float64) {
	from, total := seconds(n.At), seconds(n.Len+0.08)
	vowel := score.Pick(r, vowels)
	attack := r.Between(0.015, 0.08)
	for i := 0; i < total && from+i < len(out); i++ {
		t := float64(i) / Rate
		if i%64 == 0 {
			for k := range f {
				f[k].tune(vowel[k]*s.size, 7)
			}
		}
		key += (n.Key - key) / (s.glide * Rate)
		hz := 440 * math.Exp2((key-69+s.vibrato*min(1, t*2)*math.Sin(2*math.Pi*s.rate*t))/12)
		if phase += hz / Rate; phase >= 1 {
			phase--
		}
		src := 2*phase - 1 - blep(phase, hz/Rate) + s.breath*(r.Float64()*2-1)
		v := 1.2*f[0].band(src) + 0.6*f[1].band(src) + 0.3*f[2].band(src)
		env := min(1, t/attack)
		if t > n.Len {
			env *= math.Exp(-(t - n.Len) / 0.02)
		}
		out[from+i] += float32(0.9 * s.level * n.Level * env * v)
	}
	return phase, key
}

// consonant adds a short hiss before a note.
func (s singer) consonant(r score.Rand, out []float32, n score.Note) {
	length := r.Between(0.02, 0.09)
	from := seconds(max(0, n.At-length*0.8))
	b := newResonator(r.Between(1800, 7000), r.Between(0.7, 3))
	loud := r.Between(0.05, 0.4)
	for i := 0; i < seconds(length) && from+i < len(out); i++ {
		x := float64(i) / float64(seconds(length))
		out[from+i] += float32(loud * math.Sin(math.Pi*x) * b.band(r.Float64()*2-1))
	}
}
