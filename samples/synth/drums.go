package synth

// pans are where the instruments stand, -1 left to 1 right.
var pans = [instruments]float64{
	snare: 0.05, rim: -0.35, hat: 0.25, openHat: 0.3, ride: -0.3, shaker: 0.45,
	tambourine: -0.45, stab: -0.12, lead: 0.08, pluck: 0.3, arp: -0.2,
}

// drums writes a bar of the kit: the style's lines, and a fill where a phrase
// ends.
func (c *composer) drums(b bar) {
	if b.layers.drums == noDrums {
		return
	}
	cut := 4 * b.counts // step from which a fill takes the lines' place
	switch {
	case b.span.part == Tag:
		cut = 0
	case b.closing() && b.span.counts >= 8 && !b.layers.rise:
		cut = max(0, cut-8)
	}
	for _, ln := range c.manner.drums {
		if ln.from > b.layers.drums {
			continue
		}
		b.steps(ln.steps, c.manner.bar(), func(pos float64, i int, mark byte) {
			filled := pos >= b.place(cut)
			if filled && (ln.voice != kick || i%4 != 0) || c.hushed(b, ln.voice, pos) {
				return
			}
			c.put(ln.voice, pos, 0.25, 0, loud(mark))
		})
	}
	if cut < 4*b.counts {
		c.fill(b, cut)
	} else if b.nth == 3 && b.span.part != Intro {
		c.put(tom, float64(b.start+b.counts)-0.5, 0.25, 3, 0.55)
		c.put(tom, float64(b.start+b.counts)-0.25, 0.25, -2, 0.65)
	}
}

// hushed takes the kick away just before a build lets go.
func (c *composer) hushed(b bar, in instrument, pos float64) bool {
	gap := float64(b.span.start + b.span.counts - c.song.Meter)
	return in == kick && b.layers.rise && b.span.last && pos >= gap
}

// fillLines are the fills: what snare, high, middle and low tom play in the
// last two counts, in steps.
var fillLines = [][4]string{
	{"4.5.6789", "........", "........", "........"},
	{"........", "87......", "..76....", "....8796"},
	{"7..7..7.", "........", "......87", ".......8"},
	{"6.......", "..7.....", "...7.7..", ".....7.8"},
	{"5.55....", "....87..", "......8.", ".......9"},
}

// tomPitches are the toms' distances from the middle one [semitones].
var tomPitches = [4]float64{1: 5, 2: 0, 3: -6}

// fill plays from step cut of a bar to its end.
func (c *composer) fill(b bar, cut int) {
	lines := fillLines[c.fills.IntN(len(fillLines))]
	for v, line := range lines {
		in := tom
		if v == 0 {
			in = snare
		}
		for i := range 4*b.counts - cut {
			mark := line[i%len(line)]
			if mark == '.' {
				continue
			}
			c.put(in, b.place(cut+i), 0.25, tomPitches[v], 0.9*loud(mark))
		}
	}
}

// landing marks the start of a phrase: a crash, and a boom where a riser ends.
func (c *composer) landing(sp span, l layers) {
	at := float64(sp.start)
	if l.drums >= mainDrums && sp.counts >= 16 {
		c.put(crash, at, 4, 0, 0.6+0.3*l.level)
	}
	if sp.nth == 0 && !sp.first && (sp.part == Drop || sp.part == Breakdown) {
		c.put(impact, at, 4, 0, 0.8)
	}
}

// roll is the snare that doubles its pace towards the end of a build.
func (c *composer) roll(sp span) {
	const length = 16 // [counts]
	end := float64(sp.start + sp.counts)
	from := end - float64(min(length, sp.counts))
	for pos := from; pos < end; {
		left := (end - pos) / length // 1-0
		c.put(snare, pos, 0.25, 0, 0.25+0.5*(1-left))
		switch {
		case left > 0.5:
			pos += 1
		case left > 0.25:
			pos += 0.5
		default:
			pos += 0.25
		}
	}
}

// riser climbs to the end of a phrase.
func (c *composer) riser(sp span) {
	n := float64(min(16, sp.counts))
	c.put(riser, float64(sp.start+sp.counts)-n, n, c.harmony.pitch(-7), 0.7)
}
