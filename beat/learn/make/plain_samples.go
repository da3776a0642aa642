package main

import (
	"fmt"
	"strings"

	"onphrase/beat/learn/score"
	"onphrase/beat/spectral"
	"onphrase/samples/synth"
)

// sampleSong is by the maker of the demo's music, of which nothing is learnt.
func sampleSong(seed uint64) made {
	r := score.NewRand(seed, 23)
	style := score.Pick(r, synth.Styles())
	s := synth.Song{Title: "plain", BPM: r.Between(95, 165), Style: style, Seed: seed, Rate: spectral.Rate}
	s.Key = synth.Key{Root: r.IntN(12), Minor: r.Chance(0.5)}
	switch style {
	case synth.Waltz:
		s.Meter = 3
	case synth.HipHop, synth.HalfTime:
		s.BPM = r.Between(70, 110)
	}
	bar := max(3, s.Meter)
	if s.Meter == 0 {
		bar = 4
	}
	if r.Chance(0.4) {
		s.Lead = r.Between(0, 3)
	}
	if r.Chance(0.15) {
		s.Ambient = r.Between(1, 8)
	}
	if r.Chance(0.2) {
		s.PickUp = 1 + r.IntN(bar-1)
	}
	if r.Chance(0.3) {
		s.Feel.Jitter = r.Between(0.001, 0.006)
	}
	if r.Chance(0.4) {
		bars := score.Pick(r, []int{2, 4, 4, 8, 8, 6, 16})
		s.Sections = append(s.Sections, synth.Section{Part: synth.Intro, Counts: bar * bars})
	}
	kinds := score.Pick(r, [][]synth.Part{
		{synth.Drop}, {synth.Verse}, {synth.Verse, synth.Drop}, {synth.Verse, synth.Verse, synth.Drop},
		{synth.Verse, synth.Build, synth.Drop, synth.Breakdown},
	})
	odd := r.Chance(0.3)
	for i, counts := 0, 0; float64(counts) < s.BPM*r.Between(1.3, 2.2); i++ {
		s.Sections = append(s.Sections, synth.Section{Part: kinds[i%len(kinds)], Counts: 8 * bar})
		counts += 8 * bar
		if odd && i > 0 && r.Chance(0.3) {
			part := score.Pick(r, []synth.Part{synth.Tag, synth.Bridge})
			s.Sections = append(s.Sections, synth.Section{Part: part, Counts: bar * score.Pick(r, []int{1, 2, 4, 4})})
		}
	}
	truth := s.Truth()
	name := fmt.Sprintf("samples-%05d-%s", seed, strings.ReplaceAll(string(style), " ", "-"))
	m := made{name: name, sound: synth.Render(s).Mono()}
	for _, b := range truth.Beats {
		m.beats = append(m.beats, score.Beat{Time: b.Time, InBar: b.InBar})
	}
	for _, p := range truth.Phrases {
		if p.Label != "pick-up" {
			m.sections = append(m.sections, score.Section{Beat: p.Beat, Counts: p.Counts, Name: p.Label})
		}
	}
	return m
}
