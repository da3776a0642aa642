package score

// composer gathers the notes of one song.
type composer struct {
	r     Rand
	style Style
	feel  Feel
	harm  harmony
	song  *Song
	soft  float64 // how much levels differ from hit to hit
}

// Compose invents a song of a style, about length long [s]. The same seed
// gives the same song.
func Compose(seed uint64, style Style, length float64) Song {
	r := NewRand(seed, 1)
	start := 0.02
	switch x := r.Float64(); {
	case x < 0.18:
		start = r.Between(1, 9) // something without a beat comes first
	case x < 0.45:
		start = r.Between(0.02, 1)
	}
	song := Song{Style: style.Name, Length: length}
	c := &composer{r: r, style: style, feel: NewFeel(r, style, start, length-0.3), harm: newHarmony(r, style), song: &song,
		soft: r.Between(0, 0.25)}
	pickUp := 0
	if r.Chance(0.2) {
		pickUp = 1 + r.IntN(max(1, style.Meter-1))
	}
	c.play(pickUp)
	if start > 1 {
		c.ambience(start)
	}
	return song
}

// play fills the counts with music; the first pickUp of them come before the
// first bar.
func (c *composer) play(pickUp int) {
	counts := len(c.feel.Beats)
	for i, t := range c.feel.Beats {
		c.song.Beats = append(c.song.Beats, Beat{t, (i-pickUp+4*c.style.Meter)%c.style.Meter + 1})
	}
	for i := range pickUp {
		c.drumAt(Pick(c.r, []Part{Hat, Snare, Kick, Rim}), c.feel.Beats[i], 0.7)
	}
	c.feel.Beats = c.feel.Beats[pickUp:]
	bars := (counts - pickUp) / c.style.Meter
	plan := form(c.r, c.style, bars)
	drums, tune := newKit(c.r, c.style), newTune(c.r, c.style)
	for bar := range bars {
		sec := at(plan, bar)
		if c.style.Sound != Soft {
			drums.bar(c, bar, sec)
		}
		tune.bar(c, bar, sec)
	}
}

// ambience fills the time before the first count: drones and stray sounds.
func (c *composer) ambience(until float64) {
	for range 1 + c.r.IntN(4) {
		at := c.r.Between(0, until*0.5)
		c.song.Notes = append(c.song.Notes, Note{at, until - at, c.harm.note(c.r.IntN(8)) + 12, c.r.Between(0.1, 0.5), Pad})
	}
	if c.r.Chance(0.5) {
		c.song.Notes = append(c.song.Notes, Note{0, until, 0, c.r.Between(0.1, 0.5), Riser})
	}
	for range c.r.IntN(5) {
		c.song.Notes = append(c.song.Notes, Note{c.r.Between(0, until-0.3), 1, c.harm.note(c.r.IntN(14)) + 24,
			c.r.Between(0.1, 0.5), Lead})
	}
}

// pos is the position of a step [counts].
func (c *composer) pos(step int) float64 { return float64(step) / float64(c.style.Steps) }

// time is when a note at pos is played, with the player's looseness [s].
func (c *composer) time(pos, late float64) float64 {
	return max(0, c.feel.At(pos)+late+c.feel.Jitter*max(-2.5, min(2.5, c.r.NormFloat64())))
}

// drum plays a groove's step, if it has one there.
func (c *composer) drum(g groove, step int) {
	if level, ok := hits[g.at(step)]; ok {
		c.hit(g.part, c.pos(step), level, g.late)
	}
}

// hit plays a drum at a position.
func (c *composer) hit(part Part, pos, level, late float64) {
	c.drumAt(part, c.time(pos, late), level)
}

func (c *composer) drumAt(part Part, at, level float64) {
	level *= 1 - c.soft*c.r.Float64()
	c.song.Notes = append(c.song.Notes, Note{At: at, Len: 0.1, Level: level, Part: part})
}

// note plays a pitched note of some counts.
func (c *composer) note(part Part, pos, counts, key, level float64) {
	at := c.time(pos, 0)
	end := c.feel.At(pos + counts)
	level *= 1 - c.soft*c.r.Float64()
	c.song.Notes = append(c.song.Notes, Note{at, max(0.03, end-at), key, level, part})
}
