package score

// tune is what the pitched parts of a song play.
type tune struct {
	bass, chord groove
	arp         int          // steps between the notes of the arpeggio
	arpUp       []int        // its chord notes in order
	motif       []phraseNote // two bars of melody, in steps
	sung        []phraseNote
	answer      float64 // chance that a bar of melody is left out
	size        int     // notes in a chord
	gate        float64 // share of its length that a note sounds
}

// phraseNote is a note of a melody.
type phraseNote struct {
	step, len int
	degree    int
}

func newTune(r Rand, s Style) tune {
	t := tune{
		bass: groove{part: Bass, pattern: borrow(r, s, func(s Style) []string { return s.Bass }, 0.2),
			vary: r.Between(0, 0.3)},
		chord: groove{part: Chord, pattern: borrow(r, s, func(s Style) []string { return s.Chord }, 0.25),
			vary: r.Between(0, 0.2)},
		arp: Pick(r, []int{1, 1, 2, 2, 3}), size: 2 + r.IntN(4), gate: r.Between(0.4, 1.05), answer: r.Between(0, 0.5),
	}
	if s.Steps == 3 {
		t.arp = 1
	}
	for range 3 + r.IntN(6) {
		t.arpUp = append(t.arpUp, r.IntN(7))
	}
	t.motif = melody(r, s, r.Between(0.15, 0.6), 0)
	t.sung = melody(r, s, r.Between(0.15, 0.4), 0.3)
	return t
}

// melody is a random walk over two bars; density is the share of steps with a
// new note. Counts are a little likelier than what lies between, less so when
// loose.
func melody(r Rand, s Style, density, loose float64) []phraseNote {
	var out []phraseNote
	degree := r.IntN(8)
	n := 2 * s.Meter * s.Steps
	for i := 0; i < n; i++ {
		p := density
		if i%s.Steps == 0 {
			p *= 1.5 - loose
		} else if s.Steps == 4 && i%2 == 1 {
			p *= 0.5
		}
		if !r.Chance(p) {
			continue
		}
		out = append(out, phraseNote{i, 1 + r.IntN(6), degree})
		degree = max(-3, min(12, degree+r.IntN(7)-3))
	}
	return out
}

// bar appends one bar of the pitched parts.
func (t tune) bar(c *composer, bar int, sec section) {
	n := c.style.Meter * c.style.Steps
	first := bar * n
	if sec.parts[Bass] {
		t.line(c, t.bass, first, n, sec.level)
	}
	if sec.parts[Chord] {
		t.chords(c, first, n, sec.level)
	}
	if sec.parts[Pad] && bar%2 == 0 {
		t.pad(c, bar, sec)
	}
	if sec.parts[Arp] {
		for i := 0; i < n; i += t.arp {
			step := first + i
			d := c.harm.degree(c.pos(step)) + 2*t.arpUp[(step/t.arp)%len(t.arpUp)]
			c.note(Arp, c.pos(step), float64(t.arp)/float64(c.style.Steps)*t.gate, c.harm.note(d)+24, 0.6*sec.level)
		}
	}
	if sec.parts[Lead] && !c.r.Chance(t.answer) {
		t.sing(c, Lead, t.motif, bar, 1)
	}
	if sec.parts[Voice] && !c.r.Chance(t.answer) {
		t.sing(c, Voice, t.sung, bar, 1)
	}
	if sec.parts[Riser] && bar == sec.from {
		c.note(Riser, c.pos(first), float64(sec.bars*c.style.Meter), 0, 0.6)
	}
}

// line plays the bass.
func (t tune) line(c *composer, g groove, first, n int, level float64) {
	if c.r.Chance(g.vary) {
		g.pattern = mutate(c.r, stretch(g.pattern, n), c.style.Steps)
	}
	for i := range n {
		step := first + i
		loud, ok := hits[g.at(step)]
		if !ok {
			continue
		}
		key := c.harm.note(c.harm.degree(c.pos(step)))
		switch g.at(step) {
		case 'u':
			key += 12
		case 'f':
			key += 7
		}
		if key > 46 {
			key -= 12
		}
		c.note(Bass, c.pos(step), float64(g.held(step))*t.gate/float64(c.style.Steps), key, loud*level)
	}
}

func (t tune) chords(c *composer, first, n int, level float64) {
	g := t.chord
	if c.r.Chance(g.vary) {
		g.pattern = mutate(c.r, stretch(g.pattern, n), c.style.Steps)
	}
	for i := range n {
		step := first + i
		loud, ok := hits[g.at(step)]
		if !ok {
			continue
		}
		length := float64(g.held(step)) * t.gate / float64(c.style.Steps)
		c.chord(Chord, c.pos(step), length, t.size, loud*level)
	}
}

func (t tune) pad(c *composer, bar int, sec section) {
	from := float64(bar * c.style.Meter)
	step := float64(min(c.harm.every, 2*c.style.Meter))
	for pos := 0.0; pos < float64(2*c.style.Meter); pos += step {
		c.chord(Pad, from+pos, step, t.size, 0.6*sec.level)
	}
}

// chord plays a stack of thirds.
func (c *composer) chord(part Part, pos, counts float64, size int, level float64) {
	root := c.harm.degree(pos)
	for k := range size {
		key := c.harm.note(root+2*k) + 12
		for key > 67 {
			key -= 12
		}
		c.note(part, pos, counts, key, level*0.7)
	}
}

// sing plays the bar's half of a two-bar melody.
func (t tune) sing(c *composer, part Part, m []phraseNote, bar int, level float64) {
	n := c.style.Meter * c.style.Steps
	half := bar % 2 * n
	for _, p := range m {
		if p.step < half || p.step >= half+n {
			continue
		}
		pos := c.pos(bar*n + p.step - half)
		if part == Voice { // singers come early and late
			pos = max(0, pos+0.06*c.r.NormFloat64())
		}
		c.note(part, pos, float64(p.len)/float64(c.style.Steps), c.harm.note(p.degree)+24, level)
	}
}
