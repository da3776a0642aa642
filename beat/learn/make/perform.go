package main

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"onphrase/beat/learn"
	"onphrase/beat/learn/midi"
	"onphrase/beat/learn/score"
	"onphrase/beat/learn/studio"
	"onphrase/beat/learn/synth"
)

// rendered is a finished track and its truth.
type rendered struct {
	sound []float32
	beats []score.Beat
}

// perform renders an item and produces it.
func (run studioRun) perform(it learn.Item, tmp string) (rendered, error) {
	r := score.NewRand(it.Seed, 7)
	length := r.Between(50, 84)
	var out rendered
	var err error
	switch it.Kind {
	case "synth":
		out, err = run.composed(r, it, length, tmp)
	case "midi":
		out, err = run.arranged(r, it, length, tmp)
	case "noise":
		out.sound, err = beatless(r, it.Source, int(r.Between(30, 60)*synth.Rate))
	default:
		err = fmt.Errorf("kind %q", it.Kind)
	}
	if err != nil {
		return out, err
	}
	var speech []float32
	if it.Kind != "noise" && r.Chance(0.1) {
		if speech, err = speak(r, 1+r.IntN(5)); err != nil {
			return out, err
		}
	}
	studio.Produce(it.Seed, out.sound, speech)
	if more := laterChoices(it); it.Set != learn.HeldSet && more.Chance(0.7) {
		studio.Master(more, out.sound, times(out.beats))
	}
	if r.Chance(0.15) {
		out.sound, err = viaMP3(tmp, out.sound, r)
	}
	return out, err
}

// laterChoices are those that came after the held-out tracks were first
// rendered: they have a stream of their own, so that those stay as they are.
func laterChoices(it learn.Item) score.Rand { return score.NewRand(it.Seed, 8) }

func times(beats []score.Beat) []float64 {
	var out []float64
	for _, b := range beats {
		out = append(out, b.Time)
	}
	return out
}

// composed invents a song and plays it on our synthesiser or, if the item names
// a soundfont, with that.
func (run studioRun) composed(r score.Rand, it learn.Item, length float64, tmp string) (rendered, error) {
	style, ok := score.Named(it.Source)
	if !ok {
		return rendered{}, fmt.Errorf("no style %q", it.Source)
	}
	song := score.Compose(it.Seed, style, length)
	sound := style.Sound
	if sound != score.Soft && r.Chance(0.2) {
		sound = score.Pick(r, []score.Sound{score.Electronic, score.Acoustic, score.Heavy, score.Chip})
	}
	more := score.NewRand(it.Seed, 9)
	var words []float32
	if it.Set != learn.HeldSet && more.Chance(0.5) {
		var err error
		if words, err = sung(more, &song); err != nil {
			return rendered{}, err
		}
	}
	var x []float32
	if it.Font == "-" {
		x = synth.Play(it.Seed, song, sound)
	} else {
		x = make([]float32, int(length*synth.Rate))
		if err := run.played(x, it, midi.Band(more, song), r, tmp); err != nil {
			return rendered{}, err
		}
	}
	if x == nil {
		return rendered{}, fmt.Errorf("a silent song")
	}
	if words != nil {
		addVoice(x, words, more.Between(-2, 0.3))
	}
	return rendered{x, song.Beats}, nil
}

// addVoice brings music to a usual level and lays words over it, level octaves
// of loudness from it.
func addVoice(x, words []float32, level float64) {
	y := append([]float32(nil), x...)
	clear(x)
	mix(x, y, 1)
	mix(x, words, math.Exp2(level))
}

// kits are soundfonts with one recorded drum kit each.
var kits = []string{"Black_Pearl.sf3", "Red_Zeppelin.sf3"}

// played adds a take, played by the item's soundfont; its drums now and then by
// a recorded kit.
func (run studioRun) played(x []float32, it learn.Item, take midi.Take, r score.Rand, tmp string) error {
	more := score.NewRand(it.Seed, 10)
	var drums midi.Take
	if it.Set != learn.HeldSet && more.Chance(0.3) {
		drums = take.Split()
		if more.Chance(0.2) { // music without drums
			drums.Notes = nil
		}
	}
	for i, t := range []midi.Take{take, drums} {
		if len(t.Notes) == 0 {
			continue
		}
		font, gain := it.Font, 1.0
		if i == 1 {
			font, gain = score.Pick(more, kits), math.Exp2(more.Between(-1.5, 0.7))
		}
		y, err := fluidsynth(tmp, filepath.Join(run.fonts, font), t, r)
		if err != nil {
			return err
		}
		mix(x, y, gain)
	}
	return nil
}

// tempi are the ranges that suit a source, by words in its name [1/min].
var tempi = []struct {
	words string
	bpm   [2]float64
}{
	{"dnb jungle", [2]float64{158, 182}}, {"ballad bald slow", [2]float64{54, 96}}, {"metal thrash", [2]float64{120, 195}},
	{"techno trance house rave danc disco edm euro", [2]float64{112, 150}}, {"hip rap rb soul", [2]float64{72, 112}},
	{"waltz", [2]float64{80, 190}}, {"swing jazz bop foxtrot quick", [2]float64{100, 210}},
	{"rock punk polka twist boogie", [2]float64{100, 180}},
	{"bossa beguine rhumba bolero", [2]float64{80, 150}}, {"samba salsa merengue mambo", [2]float64{95, 190}},
}

func tempo(source string) [2]float64 {
	source = strings.ToLower(source)
	for _, t := range tempi {
		for _, word := range strings.Fields(t.words) {
			if strings.Contains(source, word) {
				return t.bpm
			}
		}
	}
	return [2]float64{76, 164}
}

func (run studioRun) arranged(r score.Rand, it learn.Item, length float64, tmp string) (rendered, error) {
	file, grid, err := open(run.midi, it.Source)
	if err != nil {
		return rendered{}, err
	}
	take := midi.Arrange(it.Seed, file, grid,
		midi.Arrangement{BPM: tempo(it.Source), Length: length, Synth: it.Font == "synth"})
	x := make([]float32, int(take.Song.Length*synth.Rate))
	more := score.NewRand(it.Seed, 9)
	var words []float32
	if it.Set != learn.HeldSet && more.Chance(0.5) {
		if words, err = sung(more, &take.Song); err != nil {
			return rendered{}, err
		}
	}
	if err := run.played(x, it, take, r, tmp); err != nil {
		return rendered{}, err
	}
	if len(take.Song.Notes) > 0 {
		sound := score.Pick(r, []score.Sound{score.Electronic, score.Acoustic, score.Chip, score.Heavy})
		mix(x, synth.Play(it.Seed, take.Song, sound), math.Exp2(r.Between(-2.5, 0.5)))
	}
	if words != nil {
		addVoice(x, words, more.Between(-2, 0.3))
	}
	return rendered{x, take.Song.Beats}, nil
}

// mix adds y, brought to an RMS of 0.1 times gain, to x.
func mix(x, y []float32, gain float64) {
	sum := 1e-9
	for _, v := range y {
		sum += float64(v) * float64(v)
	}
	g := float32(0.1 * gain / math.Sqrt(sum/float64(len(y)+1)))
	for i := range min(len(x), len(y)) {
		x[i] += g * y[i]
	}
}

// beatless makes n samples of sound without a beat.
func beatless(r score.Rand, kind string, n int) ([]float32, error) {
	switch kind {
	case "noise":
		return swelling(r, studio.Noise(r, n)), nil
	case "applause":
		return studio.Applause(r, n), nil
	case "drops":
		return studio.Drops(r, n), nil
	case "drone", "stray":
		return stray(r, kind == "drone", n), nil
	}
	voices := 1
	if kind == "crowd" {
		voices = 4 + r.IntN(5)
	}
	x := make([]float32, n)
	for range voices {
		for at := r.IntN(synth.Rate); at < n; {
			s, err := speak(r, 1+r.IntN(4))
			if err != nil {
				return nil, err
			}
			mix(x[at:], s, 1)
			at += len(s) + int(r.Between(0, 2)*synth.Rate)
		}
	}
	return x, nil
}

// swelling lets noise come and go, as wind and waves do.
func swelling(r score.Rand, x []float32) []float32 {
	f, depth := r.Between(0.02, 0.7), r.Between(0, 1)
	f2 := f * r.Between(1.2, 2.9)
	for i := range x {
		t := 2 * math.Pi * float64(i) / synth.Rate
		x[i] *= float32(1 - depth*0.5*(1+math.Sin(f*t)*math.Sin(f2*t)))
	}
	return x
}

// stray is notes at random times: long ones make a drone, short ones and drums
// a sound check.
func stray(r score.Rand, long bool, n int) []float32 {
	song := score.Song{Length: float64(n) / synth.Rate}
	parts, rate, length := []score.Part{score.Lead, score.Chord, score.Bass, score.Kick, score.Snare, score.Hat,
		score.Tom}, r.Between(0.5, 6), 0.4
	if long {
		parts, rate, length = []score.Part{score.Pad, score.Voice}, r.Between(0.1, 0.6), 5
	}
	for t := 0.0; t < song.Length; t += -math.Log(1-r.Float64()) / rate {
		song.Notes = append(song.Notes, score.Note{At: t, Len: length * r.Between(0.2, 2), Key: r.Between(36, 84),
			Level: r.Between(0.1, 1), Part: score.Pick(r, parts)})
	}
	if x := synth.Play(r.Uint64(), song, score.Pick(r,
		[]score.Sound{score.Electronic, score.Acoustic, score.Chip})); x != nil {
		return x
	}
	return make([]float32, n)
}
