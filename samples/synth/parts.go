package synth

// The low ends of the octaves the chords and the bass are folded into [MIDI].
const (
	bassLow = 31 // G1
	stabLow = 55 // G3
	padLow  = 53 // F3
	arpLow  = 65 // F4
)

// bassline writes a bar of the bass.
func (c *composer) bassline(b bar) {
	if !b.layers.bass {
		return
	}
	root := c.harmony.root(b.span.part, b.nth)
	own := c.manner.bar()
	line := c.manner.bass
	b.steps(line, own, func(pos float64, i int, mark byte) {
		held := mark < 'a'
		if held {
			mark += 'a' - 'A'
		}
		length := 0.22
		if held {
			length = float64(silence(line, i, own)) / 4
		}
		c.put(bass, pos, length, c.bassNote(root, mark), 0.9*b.layers.level)
	})
}

// bassNote is the pitch of a mark over a root: root, octave, fifth, or the
// seventh below.
func (c *composer) bassNote(root int, mark byte) float64 {
	low := fold(c.harmony.pitch(root), bassLow)
	switch mark {
	case 'o':
		return low + 12
	case 'f':
		return fold(c.harmony.pitch(root+4), low)
	case 's':
		return fold(c.harmony.pitch(root-1), low-12)
	}
	return low
}

// silence is how many steps pass from step i to the next mark in its bar.
func silence(line string, i, own int) int {
	n := 1
	for (i+n)%own != 0 && line[i+n] == '.' {
		n++
	}
	return n
}

// stabs writes a bar of chords in the style's rhythm.
func (c *composer) stabs(b bar) {
	if !b.layers.stabs {
		return
	}
	own := c.manner.bar()
	chord := c.harmony.chord(c.harmony.root(b.span.part, b.nth), stabLow)
	if len(chord) > 3 {
		chord = chord[1:] // a chord of four leaves its root to the bass
	}
	b.steps(c.manner.stab, own, func(pos float64, i int, mark byte) {
		length := 0.2 * float64(min(4, silence(c.manner.stab, i, own)))
		for _, p := range chord {
			c.put(stab, pos, length, p, loud(mark)*b.layers.level)
		}
	})
}

// pads writes the held chords of a phrase, one note as long as its chord.
func (c *composer) pads(sp span, l layers) {
	if !l.pad {
		return
	}
	meter := c.song.Meter
	for at := 0; at < sp.counts; {
		root := c.harmony.root(sp.part, at/meter)
		n := meter
		for at+n < sp.counts && c.harmony.root(sp.part, (at+n)/meter) == root {
			n += meter
		}
		n = min(n, sp.counts-at)
		if sp.part != Intro || sp.nth > 0 || at >= 4*meter {
			vel := 0.8 * l.level
			if l.rise { // a build opens up
				vel *= 0.5 + float64(at)/float64(sp.counts)
			}
			for _, p := range c.harmony.chord(root, padLow) {
				c.put(pad, float64(sp.start+at), float64(n), p, vel)
			}
		}
		at += n
	}
}

// arpOrders are ways through the notes of a chord; 3 is the lowest an octave up.
var arpOrders = [][]int{{0, 1, 2, 3}, {0, 2, 1, 3}, {3, 2, 1, 0}, {0, 1, 2, 3, 2, 1}, {0, 3, 1, 2, 3, 1, 2, 3}}

// arpeggio writes a bar of broken chords, in 16ths.
func (c *composer) arpeggio(b bar) {
	if !b.layers.arp {
		return
	}
	chord := c.harmony.chord(c.harmony.root(b.span.part, b.nth), arpLow)[:3]
	chord = append(chord[:3:3], chord[0]+12)
	for i := range 4 * b.counts {
		vel := 0.45
		if i%3 == 0 {
			vel = 0.65
		}
		if b.layers.rise { // a build's arpeggio swells with its bars
			vel *= 0.5 + float64(b.nth)/14
		}
		c.put(arp, b.place(i), 0.22, chord[c.broken[i%len(c.broken)]], vel*b.layers.level)
	}
}

// melody writes a bar of the hook, on the lead or thinned out on the pluck.
func (c *composer) melody(b bar) {
	pair, second := b.nth/2, b.nth%2
	for i, h := range c.hook.bars(pair) {
		if h.step/16 != second || h.step%16 >= 4*b.counts {
			continue
		}
		pos := float64(b.start) + float64(h.step%16)/4
		pitch := c.harmony.pitch(c.settled(h, c.harmony.root(b.span.part, b.nth)) + 7)
		length := float64(h.length) / 4 * 0.92
		if b.layers.hook {
			c.put(lead, pos, length, pitch, 0.85)
			if b.span.nth > 0 { // the second time round it is doubled an octave up
				c.put(pluck, pos, length, pitch+12, 0.5)
			}
		}
		if b.layers.answer && (pair%2 == 1 || b.span.part == Breakdown) && i%3 != 1 {
			c.put(pluck, pos, length, pitch, 0.8*b.layers.level)
		}
	}
}

// settled moves a tone on a strong count to the nearest tone of the chord.
func (c *composer) settled(h hit, root int) int {
	if h.step%8 != 0 {
		return h.tone
	}
	for _, by := range [...]int{0, -1, 1} {
		if onChord(h.tone+by, root) {
			return h.tone + by
		}
	}
	return h.tone
}

// ambience writes the beatless sound before the first count.
func (c *composer) ambience() {
	length := c.song.Ambient
	if length == 0 {
		return
	}
	at := func(in instrument, from, dur, pitch, vel float64) {
		c.score[in] = append(c.score[in], note{at: c.song.Lead + from, dur: dur, pitch: pitch, vel: vel, pan: pans[in]})
	}
	at(wash, 0, length, 0, 0.5)
	for half := range 2 {
		for _, p := range c.harmony.chord(c.harmony.calm[half], padLow) {
			at(pad, float64(half)*length/2, length/2, p, 0.7)
		}
	}
	for t := 0.6; t < length-1; t += 0.5 + 1.3*c.fills.Float64() { // drops of sound, at no beat
		at(pluck, t, 0.8, c.harmony.pitch(rung(c.song.Key.Minor, 5+c.fills.IntN(5))), 0.45)
	}
}

// pickUp leads into the first count 1.
func (c *composer) pickUp() {
	for i := range c.song.PickUp {
		pos := float64(i - c.song.PickUp)
		up := rung(c.song.Key.Minor, max(0, 5-c.song.PickUp+i))
		c.put(snare, pos, 0.25, 0, 0.5)
		c.put(tom, pos+0.5, 0.25, -3, 0.5)
		c.put(lead, pos, 0.8, c.harmony.pitch(up+7), 0.8)
	}
}
