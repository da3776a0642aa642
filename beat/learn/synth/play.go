package synth

import (
	"cmp"
	"math"
	"slices"

	"onphrase/beat/learn/score"
)

// Play renders the notes of a song in a family of timbres: mono samples at
// Rate. The same seed gives the same sound.
func Play(seed uint64, song score.Song, sound score.Sound) []float32 {
	r := score.NewRand(seed, 2)
	n := seconds(song.Length)
	var buses [score.Parts][]float32
	byPart := map[score.Part][]score.Note{}
	for _, note := range song.Notes {
		byPart[note.Part] = append(byPart[note.Part], note)
	}
	kit := newDrumKit(r, sound)
	for p := range score.Part(score.Parts) {
		notes := byPart[p]
		if len(notes) == 0 {
			continue
		}
		slices.SortFunc(notes, func(a, b score.Note) int { return cmp.Compare(a.At, b.At) })
		bus := make([]float32, n)
		switch {
		case p.Drum():
			kit.play(bus, p, notes)
		case p == score.Voice:
			newSinger(r).sing(r, bus, notes)
		case p == score.Riser:
			riser(r, bus, notes)
		default:
			tone := newPatch(r, p, sound)
			for _, note := range notes {
				tone.play(r, bus, note)
			}
			overdrive(bus, tone.drive)
			if r.Chance(0.25) && p != score.Bass {
				echo(bus, spacing(song)*score.Pick(r, []float64{0.5, 0.75, 1, 1.5}), r.Between(0.2, 0.5))
			}
		}
		buses[p] = bus
	}
	return mix(r, buses, byPart[score.Kick], sound)
}

func (k *drumKit) play(bus []float32, p score.Part, notes []score.Note) {
	for i, note := range notes {
		take := k[p][i%len(k[p])]
		from := seconds(note.At)
		for j, v := range take {
			if from+j >= len(bus) {
				break
			}
			bus[from+j] += v * float32(note.Level)
		}
	}
}

// spacing is the usual distance of counts [s].
func spacing(song score.Song) float64 {
	if len(song.Beats) < 8 {
		return 0.5
	}
	return (song.Beats[7].Time - song.Beats[0].Time) / 7
}

// riser is noise that swells until its end.
func riser(r score.Rand, bus []float32, notes []score.Note) {
	for _, note := range notes {
		f := newResonator(1000, 2)
		from, total := seconds(note.At), seconds(note.Len)
		for i := 0; i < total && from+i < len(bus); i++ {
			x := float64(i) / float64(total)
			if i%64 == 0 {
				f.tune(300*math.Exp2(4.5*x), 2)
			}
			bus[from+i] += float32(0.5 * note.Level * x * f.band(r.Float64()*2-1))
		}
	}
}

// overdrive distorts a bus; 0 leaves it alone.
func overdrive(bus []float32, drive float64) {
	if drive == 0 {
		return
	}
	for i, v := range bus {
		bus[i] = float32(0.5 * math.Tanh(drive*float64(v)))
	}
}

// echo repeats a bus after some time [s], ever softer.
func echo(bus []float32, after, feedback float64) {
	d := max(1, seconds(after))
	for i := d; i < len(bus); i++ {
		bus[i] += float32(feedback) * bus[i-d]
	}
}

// faders is the usual balance of the parts.
var faders = [score.Parts]float64{
	score.Kick: 0.9, score.Snare: 0.6, score.Clap: 0.5, score.Rim: 0.35, score.Hat: 0.25, score.OpenHat: 0.22,
	score.Ride:  0.2,
	score.Crash: 0.3, score.Tom: 0.5, score.Shaker: 0.15, score.Conga: 0.3, score.Bell: 0.2,
	score.Bass: 0.8, score.Chord: 0.5, score.Pad: 0.5, score.Arp: 0.45, score.Lead: 0.5, score.Voice: 0.6,
	score.Riser: 0.3,
}

// mix sums the buses with faders drawn for the song; with electronic music the
// kick often ducks the rest.
func mix(r score.Rand, buses [score.Parts][]float32, kicks []score.Note, sound score.Sound) []float32 {
	var out []float32
	duck := 0.0
	if sound == score.Electronic && r.Chance(0.5) {
		duck = r.Between(0.3, 0.95)
	}
	recover := r.Between(0.06, 0.3)
	drums := math.Exp2(r.Between(-1.3, 0.8)) // the balance of drums and the rest
	for p, bus := range buses {
		if bus == nil {
			continue
		}
		if out == nil {
			out = make([]float32, len(bus))
		}
		gain := faders[p] * math.Exp2(r.Between(-1.4, 0.6))
		if score.Part(p).Drum() {
			gain *= drums
		} else if duck > 0 {
			ducked(bus, kicks, duck, recover)
		}
		for i, v := range bus {
			out[i] += float32(gain) * v
		}
	}
	return out
}

// ducked turns a bus down at every kick; it recovers within some time [s].
func ducked(bus []float32, kicks []score.Note, depth, recover float64) {
	next, last := 0, -1e9
	for i := range bus {
		t := float64(i) / Rate
		for next < len(kicks) && kicks[next].At <= t {
			last = kicks[next].At
			next++
		}
		if dt := t - last; dt < 5*recover {
			bus[i] *= float32(1 - depth*math.Exp(-dt/recover))
		}
	}
}
