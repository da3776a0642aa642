package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"onphrase/beat/learn/score"
	"onphrase/beat/learn/synth"
)

// place is where a song of a mix lies.
type place struct {
	from    float64 // [s]
	bpm     float64
	phrases int
	in, out int     // counts over which it is faded in and out
	cut     float64 // left out at its end [s]
}

func (p place) period() float64 { return 60 / p.bpm }

// length is how long it sounds [s].
func (p place) length() float64 { return float64(p.phrases*32)*p.period() - p.cut }

// mix makes three to six songs one after the other: at one tempo or at others,
// blended over 8 to 32 counts or cut, now and then in the midst of a phrase.
func mix(seed uint64, dir string, r score.Rand) (string, error) {
	var out []float32
	var beats []score.Beat
	var songs strings.Builder
	places := plan(r)
	for i, p := range places {
		x, own, err := mixed(r, seed*100+uint64(i), p)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&songs, "%.3f\t%.3f\t%.2f\n", p.from, p.from+float64(p.in)*p.period(), p.bpm)
		out = lay(out, x, p)
		beats = join(beats, own, p)
	}
	name := filepath.Join(dir, fmt.Sprintf("mix%03d", seed))
	if err := os.WriteFile(name+".songs", []byte(songs.String()), 0o644); err != nil {
		return "", err
	}
	return fmt.Sprintf("%s\tmix\tmix\t4\t%.3f\tsteps\t", filepath.Base(name), places[0].bpm), write(name, out, beats)
}

// plan says where the songs of a mix lie.
func plan(r score.Rand) []place {
	n, same, bpm := 3+r.IntN(4), r.Chance(0.4), float64(100+r.IntN(50))
	blends := []int{8, 16, 32}
	if !same {
		blends = []int{8, 8, 16}
	}
	var out []place
	at, in := 0.0, 0
	for i := range n {
		if i > 0 && !same {
			step := score.Pick(r, []float64{-12, -8, -6, -4, -2, 2, 3, 4, 6, 8, 10, 14, 20})
			bpm = max(92, min(165, bpm+step))
		}
		p := place{from: at, bpm: bpm, phrases: 3 + r.IntN(6), in: in}
		if last := i == n-1; !last && r.Chance(0.6) {
			p.out = score.Pick(r, blends)
		} else if !last && r.Chance(0.3) {
			p.cut = float64(score.Pick(r, []int{1, 3, 4, 8})) * p.period() * score.Pick(r, []float64{1, 1, 0.7})
		}
		at += p.length() - float64(p.out)*p.period()
		if p.out == 0 && r.Chance(0.1) {
			at += r.Between(0.3, 2.5)
		}
		in = p.out
		out = append(out, p)
	}
	return out
}

// mixed makes a song of whole phrases for its place, and brings it to the level of
// the others.
func mixed(r score.Rand, seed uint64, p place) ([]float32, []score.Beat, error) {
	s := score.Pick(r, []func(score.Rand) spec{offbeats, cross, sparse})(r)
	s.font, s.bpm, s.lead = "", p.bpm, 0
	var all []section
	for i := range p.phrases {
		sec := s.sections[i%len(s.sections)]
		sec.counts = 32
		all = append(all, sec)
	}
	s.sections = all
	notes := s.compose(r)
	x, err := s.render(notes, seed)
	if err != nil {
		return nil, nil, err
	}
	const level = 0.12 // root mean square
	square := 1e-12
	for _, v := range x {
		square += float64(v) * float64(v) / float64(len(x))
	}
	for i := range x {
		x[i] *= float32(level / math.Sqrt(square))
	}
	return x, notes.Beats, nil
}

// lay adds a song to a mix, faded in and out.
func lay(out, x []float32, p place) []float32 {
	from, n := int(p.from*synth.Rate), int(p.length()*synth.Rate)
	for len(out) < from+n {
		out = append(out, 0)
	}
	in, end := float64(p.in)*p.period(), float64(p.out)*p.period()
	for i := range min(n, len(x)) {
		t, gain := float64(i)/synth.Rate, 1.0
		if t < in {
			gain *= t / in
		}
		if left := p.length() - t; left < end {
			gain *= left / end
		}
		out[from+i] += x[i] * float32(gain)
	}
	return out
}

// join adds the counts of a song to those of a mix: from the middle of a blend on
// they are its own.
func join(beats, own []score.Beat, p place) []score.Beat {
	const apart = 0.2 // [s]
	middle := p.from + float64(p.in)*p.period()/2
	for len(beats) > 0 && beats[len(beats)-1].Time > middle-0.01 {
		beats = beats[:len(beats)-1]
	}
	for _, b := range own {
		t := p.from + b.Time
		if b.Time < p.length()-0.05 && (len(beats) == 0 || t > beats[len(beats)-1].Time+apart) {
			beats = append(beats, score.Beat{Time: t, InBar: b.InBar})
		}
	}
	return beats
}
