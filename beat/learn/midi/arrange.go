package midi

import (
	"math"

	"onphrase/beat/learn/score"
)

// Take is one new performance of a file: what a General MIDI synthesiser is to
// play, what our own may lay over it, and the truth.
type Take struct {
	Notes    []Timed
	Programs [16]int
	Song     score.Song // beats; notes of the overlay, or of everything
}

// Timed is a MIDI note in seconds.
type Timed struct {
	At, Len                float64
	Channel, Key, Velocity int
}

// Arrangement sets what is done with a file.
type Arrangement struct {
	BPM    [2]float64
	Length float64 // at most [s]
	Synth  bool    // our own synthesiser plays everything
}

// arranger carries the choices of one take.
type arranger struct {
	r     score.Rand
	file  *File
	grid  Grid
	feel  score.Feel
	first int // tick of the excerpt's first count
	drop  [16]bool
	mute  [2]float64 // stretch without drums [counts]
	key   int        // transposition
	loud  [16]float64
}

// Arrange performs an excerpt of a file: another tempo, other instruments, some
// channels silent. The same seed gives the same take.
func Arrange(seed uint64, f *File, g Grid, a Arrangement) Take {
	r := score.NewRand(seed, 4)
	style := score.Style{Meter: g.Meter, Steps: 4, BPM: a.BPM, Swing: [2]float64{0.5, 0.5}}
	if r.Chance(0.2) {
		style.Swing[1] = 0.64
	}
	x := arranger{r: r, file: f, grid: g, feel: score.NewFeel(r, style, r.Between(0.05, 1.2), a.Length-1),
		key: r.IntN(9) - 4}
	bars := (g.To - g.From) / (g.Beat * g.Meter)
	room := bars - len(x.feel.Beats)/g.Meter
	x.first = g.From
	if room > 0 {
		x.first += r.IntN(room+1) * g.Beat * g.Meter
	}
	x.choose()
	var take Take
	take.Programs = x.programs()
	counts := min(len(x.feel.Beats)-1, (g.To-x.first)/g.Beat)
	for i, t := range x.feel.Beats[:counts] {
		take.Song.Beats = append(take.Song.Beats, score.Beat{Time: t, InBar: i%g.Meter + 1})
	}
	take.Song.Length = min(a.Length, x.feel.Beats[counts]+1.5)
	x.feel.Beats = x.feel.Beats[:counts+1]
	x.perform(&take)
	x.dress(&take, a.Synth)
	return take
}

// choose draws which channels play and where the drums pause.
func (x *arranger) choose() {
	for ch := range x.drop {
		x.drop[ch] = x.r.Chance(0.14)
		x.loud[ch] = x.r.Between(0.6, 1.2)
	}
	x.mute = [2]float64{-1, -1}
	if n := float64(len(x.feel.Beats)); x.r.Chance(0.3) && n > 48 {
		x.mute[0] = math.Floor(x.r.Between(16, n-24)/4) * 4
		x.mute[1] = x.mute[0] + score.Pick(x.r, []float64{16, 32})
	}
}

// programs are the file's at the excerpt's start, many exchanged.
func (x *arranger) programs() [16]int {
	var p [16]int
	for _, e := range x.file.Programs {
		if e.Tick <= x.first+x.grid.Beat*x.grid.Meter {
			p[e.Channel] = e.Number
		}
	}
	exchange := 0.0
	if x.r.Chance(0.7) {
		exchange = x.r.Between(0.2, 0.9)
	}
	for ch := range p {
		if !x.r.Chance(exchange) {
			continue
		}
		if ch == Drums {
			p[ch] = score.Pick(x.r, []int{0, 8, 16, 24, 25, 32, 40})
		} else {
			p[ch] = x.r.IntN(112)
		}
	}
	return p
}

// perform plays the notes of the excerpt.
func (x *arranger) perform(take *Take) {
	end := x.first + (len(x.feel.Beats)-1)*x.grid.Beat
	for _, n := range x.file.Notes {
		if n.Tick < x.first || n.Tick >= end || x.drop[n.Channel] {
			continue
		}
		pos := float64(n.Tick-x.first) / float64(x.grid.Beat)
		if n.Channel == Drums && pos >= x.mute[0] && pos < x.mute[1] {
			continue
		}
		at := max(0, x.feel.At(pos)+x.feel.Jitter*x.r.NormFloat64())
		length := max(0.03, x.feel.At(pos+float64(n.Len)/float64(x.grid.Beat))-x.feel.At(pos))
		key := n.Key
		if n.Channel != Drums {
			key = max(0, min(127, key+x.key))
		}
		v := max(1, min(127, int(float64(n.Velocity)*x.loud[n.Channel])))
		take.Notes = append(take.Notes, Timed{at, length, n.Channel, key, v})
	}
}

// dress adds what our own synthesiser plays.
func (x *arranger) dress(take *Take, all bool) {
	r := x.r
	if x.grid.Meter >= 3 && r.Chance(0.22) {
		if style := score.Pick(r, score.Styles); style.Meter == x.grid.Meter && style.Sound != score.Soft &&
			style.Steps == 4 {
			if r.Chance(0.6) {
				take.Silence(Drums)
			}
			take.Song.Notes = append(take.Song.Notes, score.Overlay(r, style, x.feel)...)
		}
	}
	if r.Chance(0.4) {
		take.Song.Notes = append(take.Song.Notes, score.Vocals(r, x.grid.Meter, x.feel)...)
	}
	if all {
		take.Song.Notes = append(take.Song.Notes, asNotes(r, take.Notes)...)
		take.Notes = nil
	}
}

// Silence removes a channel.
func (t *Take) Silence(channel int) {
	kept := t.Notes[:0]
	for _, n := range t.Notes {
		if n.Channel != channel {
			kept = append(kept, n)
		}
	}
	t.Notes = kept
}

// drumParts maps keys of the General MIDI drum map to our drums.
var drumParts = map[int]score.Part{
	35: score.Kick, 36: score.Kick, 37: score.Rim, 38: score.Snare, 39: score.Clap, 40: score.Snare, 42: score.Hat,
	44: score.Hat,
	46: score.OpenHat, 49: score.Crash, 51: score.Ride, 52: score.Crash, 53: score.Ride, 54: score.Shaker, 55: score.Crash,
	57: score.Crash, 59: score.Ride, 69: score.Shaker, 70: score.Shaker, 82: score.Shaker, 41: score.Tom, 43: score.Tom,
	45: score.Tom, 47: score.Tom, 48: score.Tom, 50: score.Tom, 60: score.Conga, 61: score.Conga, 62: score.Conga,
	63: score.Conga, 64: score.Conga, 65: score.Conga, 66: score.Conga,
}

// asNotes gives each channel a part of our own synthesiser.
func asNotes(r score.Rand, timed []Timed) []score.Note {
	var sum, count [16]int
	for _, n := range timed {
		sum[n.Channel] += n.Key
		count[n.Channel]++
	}
	var parts [16]score.Part
	for ch := range parts {
		parts[ch] = score.Pick(r, []score.Part{score.Chord, score.Arp, score.Lead, score.Chord, score.Pad})
		if count[ch] > 0 && sum[ch]/count[ch] < 48 {
			parts[ch] = score.Bass
		}
	}
	var out []score.Note
	for _, n := range timed {
		note := score.Note{At: n.At, Len: n.Len, Key: float64(n.Key), Level: float64(n.Velocity) / 127,
			Part: parts[n.Channel]}
		if n.Channel == Drums {
			p, ok := drumParts[n.Key]
			if !ok {
				p = score.Bell
			}
			note.Part, note.Key = p, 0
		}
		out = append(out, note)
	}
	return out
}
