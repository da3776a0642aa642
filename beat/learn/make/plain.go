package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat/learn/bare"
	"onphrase/beat/learn/midi"
	"onphrase/beat/learn/score"
	"onphrase/beat/learn/studio"
	"onphrase/beat/learn/synth"
)

// made is a song and its truth.
type made struct {
	name     string
	sound    []float32
	beats    []score.Beat
	sections []score.Section
}

// plain renders plain songs of one maker, ID.wav, ID.beats and ID.phrases each:
// "synth" plays on the instruments of beat/learn/synth, a soundfont on General
// MIDI's, "bare" and "samples" are of another composer with other instruments.
// A song is a pure function of maker and seed.
func plain(args []string) error {
	f := flag.NewFlagSet("plain", flag.ExitOnError)
	out := f.String("o", "", "folder for the songs")
	maker := f.String("maker", "synth", "synth, bare, samples, or a soundfont")
	n := f.Int("n", 60, "how many")
	seed := f.Uint64("seed", 1, "of the first one")
	f.Parse(args)
	if err := os.MkdirAll(*out, 0o755); err != nil {
		return err
	}
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range *n {
		g.Go(func() error {
			m, err := makePlain(*maker, *seed+uint64(i))
			if err != nil || m.sound == nil {
				return err
			}
			return writePhrased(filepath.Join(*out, m.name), m.sound, m.beats, m.sections)
		})
	}
	return g.Wait()
}

func makePlain(maker string, seed uint64) (made, error) {
	switch maker {
	case "bare":
		return bareSong(seed), nil
	case "samples":
		return sampleSong(seed), nil
	}
	r := score.NewRand(seed, 22)
	styles := score.All()
	weights := make([]float64, len(styles))
	for i, s := range styles {
		weights[i] = s.Weight
	}
	style := styles[r.Weighted(weights)]
	song, sections := score.ComposePlain(seed, style, r.Between(70, 150))
	name := fmt.Sprintf("%s%05d-%s", fontName(maker), seed, strings.ReplaceAll(style.Name, "/", "-"))
	m := made{name: name, beats: song.Beats, sections: sections}
	if len(sections) == 0 {
		return made{}, nil
	}
	if maker == "synth" {
		m.sound = synth.Play(seed, song, style.Sound)
	} else {
		sound, err := playedBy(maker, song, r)
		if err != nil {
			return made{}, err
		}
		m.sound = sound
	}
	if r.Chance(0.6) {
		studio.Produce(seed, m.sound, nil)
	} else {
		studio.Normalise(m.sound)
	}
	return m, nil
}

func fontName(maker string) string {
	return strings.TrimSuffix(filepath.Base(maker), filepath.Ext(maker)) + "-"
}

// playedBy has a soundfont play the song, and our own synthesiser what a band
// does not: sounds that grow.
func playedBy(font string, song score.Song, r score.Rand) ([]float32, error) {
	tmp, err := os.MkdirTemp("", "plain")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(tmp)
	x, err := fluidsynth(tmp, font, midi.Band(r, song), r)
	if err != nil {
		return nil, err
	}
	risers := score.Song{Beats: song.Beats, Length: song.Length}
	for _, n := range song.Notes {
		if n.Part == score.Riser {
			risers.Notes = append(risers.Notes, n)
		}
	}
	if len(risers.Notes) > 0 {
		mix(x, synth.Play(r.Uint64(), risers, score.Electronic), 0.5)
	}
	return x, nil
}

func bareSong(seed uint64) made {
	song := bare.Random(seed)
	truth := song.Truth()
	name := fmt.Sprintf("bare-%05d-%s", seed, strings.ReplaceAll(song.Groove.Name, " ", "-"))
	m := made{name: name, sound: song.Render()}
	for i, t := range truth.Beats {
		m.beats = append(m.beats, score.Beat{Time: t, InBar: truth.InBar[i]})
	}
	for i, start := range truth.Starts {
		m.sections = append(m.sections, score.Section{Beat: start, Counts: truth.Lengths[i], Name: "phrase"})
	}
	return m
}
