package bare

import "math/rand/v2"

func pick[T any](r *rand.Rand, from ...T) T { return from[r.IntN(len(from))] }

// Random invents a song. The same seed gives the same song.
func Random(seed uint64) Song {
	r := rand.New(rand.NewPCG(seed, 0xba4e))
	chance := func(p float64) bool { return r.Float64() < p }
	s := Song{Seed: seed, Groove: Grooves[r.IntN(len(Grooves)-3)], BPM: 95 + 70*r.Float64(), Minor: chance(0.5)}
	switch x := r.Float64(); {
	case x < 0.08:
		s.Groove = Grooves[len(Grooves)-3+r.IntN(2)]
	case x < 0.14:
		s.Groove, s.BPM = Grooves[len(Grooves)-1], 60+50*r.Float64()
	}
	if chance(0.4) {
		s.Silence = 3 * r.Float64()
	}
	if chance(0.15) {
		s.PickUp = 1 + r.IntN(s.Bar()-1)
	}
	s.Crash, s.Last = chance(0.55), chance(0.2)
	if chance(0.55) {
		s.Fill, s.Toms, s.Build = pick(r, 1, 2, 2, 4, 4, 4, 8), chance(0.3), chance(0.3)
	}
	switch r.IntN(8) {
	case 0:
		s.Swell = pick(r, 2, 4, 8)
	case 1:
		s.Drop = pick(r, 2, 4, 8)
	case 2:
		s.Hush = pick(r, 1, 2, 4)
	}
	bars := pick(r, 1, 2, 4, 4, 8)
	for range 2 {
		var loop []int
		for i := range bars {
			d := pick(r, 0, 3, 4, 5, 1, 2)
			if i == 0 && chance(0.7) {
				d = 0
			}
			loop = append(loop, d)
		}
		s.Chords = append(s.Chords, loop)
		s.Melody = append(s.Melody, tune(r, pick(r, 2, 4, 4, 8)*s.Bar()))
	}
	s.Phrases = phrases(r, s.Bar(), int(s.BPM*(80+70*r.Float64())/60))
	return s
}

// tune is a melody of some counts.
func tune(r *rand.Rand, counts int) []Sound {
	var out []Sound
	degree := 4
	for at := 0.0; at < float64(counts); {
		n := pick(r, 0.5, 0.5, 1, 1, 2, 3)
		if r.Float64() < 0.7 {
			out = append(out, Sound{at, 0.9 * min(n, 2), degree})
		}
		degree = max(0, min(9, degree+r.IntN(5)-2))
		at += n
	}
	return out
}

// phrases fills some counts. In a third of the songs all phrases sound the
// same, in a third players join, in a third two kinds take turns.
func phrases(r *rand.Rand, bar, counts int) []Phrase {
	kind, odd := r.IntN(3), r.Float64() < 0.3
	var silent []int
	for _, p := range []int{Kick, Snare, Hats, Bass, Chords, Melody} {
		if r.Float64() < 0.35 && p != Kick {
			silent = append(silent, p)
		}
	}
	always := []int{}
	if r.Float64() < 0.6 {
		always = append(always, Melody)
	}
	if r.Float64() < 0.15 {
		always = append(always, Chords)
	}
	var out []Phrase
	if r.Float64() < 0.35 {
		intro := bar * pick(r, 1, 2, 2, 4, 4, 4, 6, 8, 8, 16)
		pausing := pick(r, []int{Bass, Chords, Melody}, []int{Kick, Snare, Melody}, []int{Kick, Snare, Hats, Bass, Melody},
			[]int{Chords, Melody}, []int{Kick, Bass, Chords, Melody})
		out = append(out, Phrase{Counts: intro, Out: pausing})
		counts -= out[0].Counts
	}
	for i := 0; counts >= 8*bar; i++ {
		p := Phrase{Counts: 8 * bar, Out: always}
		switch kind {
		case 1:
			p.Out = append([]int{}, always...)
			p.Out = append(p.Out, silent[min(i, len(silent)):]...)
		case 2:
			p.Loop = i % 2
			if i%2 == 0 {
				p.Out = append(append([]int{}, always...), silent...)
			}
		}
		out = append(out, p)
		counts -= p.Counts
		if odd && i > 0 && r.Float64() < 0.3 {
			n := bar * pick(r, 1, 2, 4, 4, 6)
			out = append(out, Phrase{Counts: n, Loop: p.Loop, Out: p.Out})
			counts -= n
		}
	}
	if n := len(out) - 1; n > 1 && r.Float64() < 0.25 { // it ends early
		out[n].Counts = bar * (1 + r.IntN(7))
	}
	return out
}
