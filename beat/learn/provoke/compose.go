package main

import (
	"maps"
	"slices"

	"onphrase/beat/learn/score"
)

// patterns say what each part plays, a character a sixteenth, over and over from
// the start of a section: X accent, x hit, o ghost, u an octave up, - held, . rest.
type patterns = map[score.Part]string

// section is a stretch of a song.
type section struct {
	counts int
	play   patterns
	chords []int // degrees, a bar each, over and over
	name   string
}

// spec is a song to be made.
type spec struct {
	bpm      float64
	meter    int
	lead     float64 // silence before it [s]
	sections []section
	sound    score.Sound
	font     string // soundfont; empty: our synthesiser
}

// sixteenths in a count.
const sixteenths = 4

var (
	roots = []float64{33, 36, 38, 40, 41, 43, 45} // MIDI keys
	major = []int{0, 2, 4, 5, 7, 9, 11}
	minor = []int{0, 2, 3, 5, 7, 8, 10}
)

// voice is how the song's notes get their pitches.
type voice struct {
	root  float64
	scale []int
	tunes map[score.Part][]int
}

func newVoice(r score.Rand) voice {
	v := voice{root: score.Pick(r, roots), scale: major, tunes: map[score.Part][]int{}}
	if r.Chance(0.6) {
		v.scale = minor
	}
	for _, p := range []score.Part{score.Lead, score.Arp, score.Voice} {
		for range 48 {
			v.tunes[p] = append(v.tunes[p], r.IntN(8))
		}
	}
	return v
}

// key is the MIDI key of a degree of the scale.
func (v voice) key(degree int) float64 {
	n := len(v.scale)
	return v.root + float64(v.scale[degree%n]+12*(degree/n))
}

// compose writes the notes of the song and its counts.
func (s spec) compose(r score.Rand) score.Song {
	var song score.Song
	v := newVoice(r)
	period, at := 60/s.bpm, s.lead
	for _, sec := range s.sections {
		for k := range sec.counts {
			song.Beats = append(song.Beats, score.Beat{Time: at + float64(k)*period, InBar: len(song.Beats)%s.meter + 1})
		}
		for _, part := range slices.Sorted(maps.Keys(sec.play)) {
			song.Notes = append(song.Notes, s.play(v, sec, part, at)...)
		}
		at += float64(sec.counts) * period
	}
	song.Length = at + 1
	return song
}

// play writes what one part plays in a section that begins at a time [s].
func (s spec) play(v voice, sec section, part score.Part, at float64) []score.Note {
	var out []score.Note
	pattern, total := sec.play[part], sec.counts*sixteenths
	step := 60 / s.bpm / sixteenths
	for i := range total {
		c := pattern[i%len(pattern)]
		if c == '.' || c == '-' {
			continue
		}
		length := 1
		for j := i + 1; j < total && pattern[j%len(pattern)] == '-'; j++ {
			length++
		}
		note := score.Note{At: at + float64(i)*step, Len: 0.9 * float64(length) * step, Level: 0.8, Part: part}
		switch c {
		case 'X':
			note.Level = 1
		case 'o':
			note.Level = 0.35
		}
		chord := sec.chords[i/(sixteenths*s.meter)%len(sec.chords)]
		out = append(out, v.sound(note, chord, c == 'u', i)...)
	}
	return out
}

// sound gives a note its pitch, or its pitches.
func (v voice) sound(note score.Note, chord int, up bool, i int) []score.Note {
	switch p := note.Part; {
	case p.Drum():
		note.Len = 0.2
	case p == score.Riser:
	case p == score.Bass:
		note.Key = v.key(chord)
		if up {
			note.Key += 12
		}
	case p == score.Chord || p == score.Pad:
		note.Level *= 0.7
		var out []score.Note
		for _, third := range []int{0, 2, 4} {
			note.Key = v.key(chord+third) + 24
			out = append(out, note)
		}
		return out
	default:
		note.Key = v.key(chord+v.tunes[p][i%len(v.tunes[p])]) + 36
	}
	return []score.Note{note}
}
