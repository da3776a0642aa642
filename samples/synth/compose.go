package synth

import (
	"math"
	"math/rand/v2"
)

// composer writes what every instrument plays.
type composer struct {
	song    Song
	grid    *grid
	manner  manner
	swing   float64 // 0-1
	harmony harmony
	hook    hook
	broken  []int // order of the chord's notes in the arpeggio
	fills   *rand.Rand
	human   *rand.Rand
	score   *score
}

// compose writes a song down.
func compose(s Song, g *grid) *score {
	// Each kind of choice draws from a stream of its own, so that a change to
	// one leaves the others as they were.
	stream := func(n uint64) *rand.Rand { return rand.New(rand.NewPCG(s.Seed, n)) }
	m := manners[s.Style]
	c := &composer{
		song: s, grid: g, manner: m, swing: m.swing,
		harmony: newHarmony(s.Key, m.tones, stream(1)),
		hook:    newHook(s.Key.Minor, stream(2)),
		broken:  arpOrders[stream(3).IntN(len(arpOrders))],
		fills:   stream(4),
		human:   stream(5),
		score:   new(score),
	}
	if s.Feel.Swing != 0 {
		c.swing = math.Max(0, s.Feel.Swing)
	}
	c.ambience()
	c.pickUp()
	for _, sp := range phrasesOf(s) {
		c.phrase(sp)
	}
	return c.score
}

// phrase writes one phrase, bar by bar.
func (c *composer) phrase(sp span) {
	l := layersOf[sp.part]
	c.landing(sp, l)
	for at := 0; at < sp.counts; at += c.song.Meter {
		b := bar{span: sp, layers: c.thinned(l, sp, at), nth: at / c.song.Meter, start: sp.start + at}
		b.counts = min(c.song.Meter, sp.counts-at)
		c.drums(b)
		c.bassline(b)
		c.stabs(b)
		c.arpeggio(b)
		c.melody(b)
	}
	c.pads(sp, l)
	if l.rise && sp.last {
		c.roll(sp)
	}
	if (l.rise || l.drums == noDrums) && sp.last {
		c.riser(sp)
	}
}

// bar is one bar of a phrase.
type bar struct {
	span   span
	layers layers
	nth    int // in the phrase, from 0
	start  int // count, from the first count 1
	counts int // fewer than the meter where a phrase ends early
}

// closing reports whether the bar is the last of its phrase.
func (b bar) closing() bool { return b.start+b.counts == b.span.start+b.span.counts }

// thinned takes layers away where a section comes in or goes out, and adds
// where it goes on.
func (c *composer) thinned(l layers, sp span, at int) layers {
	half := at >= 4*c.song.Meter
	switch {
	case sp.part == Intro && sp.nth == 0 && !half:
		l.stabs, l.pad = false, false
	case sp.part == Intro && sp.nth > 0:
		l.bass, l.drums = true, mainDrums
	case sp.part == Outro && sp.last && half:
		l.bass, l.stabs, l.drums = false, false, lightDrums
	case sp.part == Verse && sp.nth > 0:
		l.arp = true
	}
	return l
}

// put writes a note at a place in counts, where the swing and the player's
// hands put it.
func (c *composer) put(in instrument, pos, counts, pitch, vel float64) {
	at := c.grid.at(c.lilt(pos))
	n := note{at: at, dur: c.grid.at(pos+counts) - c.grid.at(pos), pitch: pitch, pan: pans[in]}
	n.vel = math.Min(1, vel*(1+0.06*c.human.NormFloat64()))
	late := c.human.NormFloat64() * c.song.Feel.Jitter
	n.at = math.Max(0, n.at+late)
	c.score[in] = append(c.score[in], n)
}

// lilt moves an off-beat by the swing; places on a count stay.
func (c *composer) lilt(pos float64) float64 {
	whole := math.Floor(pos)
	step := (pos - whole) * 4 // [16ths]
	third := c.swing / 12     // a 16th of a shuffle comes a twelfth of a count late
	switch {
	case !c.manner.eighth && (step == 1 || step == 3):
		return pos + third
	case c.manner.eighth && step == 2:
		return pos + 2*third
	case c.manner.eighth && (step == 1 || step == 3):
		return pos + third
	}
	return pos
}

// steps calls play for every step of a style's line that falls into the bar,
// with its place [counts] and its index in the line. A bar longer than the
// style's own goes round it again, a shorter one is cut.
func (b bar) steps(line string, own int, play func(pos float64, i int, mark byte)) {
	from := b.nth % (len(line) / own) * own
	for step := range 4 * b.counts {
		i := from + step%own
		if mark := line[i]; mark != '.' {
			play(b.place(step), i, mark)
		}
	}
}

// place is where a step of the bar lies [counts].
func (b bar) place(step int) float64 { return float64(b.start) + float64(step)/4 }

// loud is the loudness of a mark 1-9.
func loud(mark byte) float64 { return float64(mark-'0') / 9 }
