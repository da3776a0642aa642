package score

// ensemble is what the players of a plain song do: the same in each bar, or in
// every second or fourth another way.
type ensemble struct {
	r      Rand
	unit   int
	drums  kit
	other  kit // of every nth bar
	nth    int
	tune   tune
	parts  [Parts]bool // all who play in the song
	change int         // how the arrangement goes on, see playing
	leaves []Part      // who comes and goes
	line   []phraseNote
	bars   int  // that the line lasts
	up     bool // it sets in before count 1
}

// How an arrangement goes on.
const (
	still  = iota // the same throughout
	joined        // one after the other joins
	turned        // verse and chorus differ
	arrangements
)

func newCast(r Rand, s Style) ensemble {
	e := ensemble{r: r, unit: s.Meter, drums: newKit(r, s), tune: newTune(r, s), change: r.IntN(arrangements)}
	e.nth = Pick(r, []int{0, 0, 0, 2, 4})
	if s.Meter == 2 {
		e.unit = 4
	}
	e.drums.fills, e.drums.crash = 0, 0
	for i := range e.drums.grooves {
		e.drums.grooves[i].vary = 0
	}
	e.tune.bass.vary, e.tune.chord.vary, e.tune.answer = 0, 0, 0
	e.other = e.drums
	e.other.grooves = append([]groove{}, e.drums.grooves...)
	for i, g := range e.other.grooves[:2] {
		e.other.grooves[i].pattern = mutate(r, stretch(g.pattern, s.Meter*s.Steps), s.Steps)
	}
	for _, p := range []struct {
		part   Part
		chance float64
	}{
		{Kick, 0.97}, {Snare, 0.85}, {Hat, 0.85}, {OpenHat, 0.2}, {Shaker, 0.2}, {Conga, 0.2},
		{Bass, 0.9}, {Chord, 0.75}, {Pad, 0.3}, {Arp, 0.2}, {Lead, 0.3}, {Voice, 0.2},
	} {
		e.parts[p.part] = r.Chance(p.chance)
	}
	if s.Sound == Soft {
		for d := Kick; d < Bass; d++ {
			e.parts[d] = false
		}
		e.parts[Chord] = true
	}
	e.bars = Pick(r, []int{1, 2, 2, 4, 4, 8})
	e.line = longMelody(r, s, e.unit*s.Steps*e.bars)
	e.up = r.Chance(0.4)
	for p := Kick; int(p) < Parts; p++ {
		if e.parts[p] && r.Chance(0.35) {
			e.leaves = append(e.leaves, p)
		}
	}
	return e
}

// longMelody is a melody of n steps that says its first half twice now and then.
func longMelody(r Rand, s Style, n int) []phraseNote {
	bar := 2 * s.Meter * s.Steps
	var out []phraseNote
	motif := melody(r, s, r.Between(0.15, 0.5), 0)
	for at := 0; at < n; at += bar {
		if r.Chance(0.6) {
			motif = melody(r, s, r.Between(0.15, 0.5), 0)
		}
		for _, p := range motif {
			if at+p.step < n {
				out = append(out, phraseNote{at + p.step, p.len, p.degree})
			}
		}
	}
	return out
}

// playing says who plays in section i.
func (e ensemble) playing(i int, name string) [Parts]bool {
	p := e.parts
	r := NewRand(uint64(len(e.leaves)), uint64(e.bars)) // an intro is the same in each song of the kind
	switch {
	case name == "intro":
		for q := range p {
			if p[q] && r.Chance(0.6) {
				p[q] = false
			}
		}
		if none(p) {
			p[Pick(r, []Part{Hat, Pad, Chord, Kick})] = true
		}
	case name == "break":
		p[Kick], p[Snare] = false, false
	case e.change == joined:
		for k, q := range e.leaves {
			p[q] = i > k
		}
	case e.change == turned && name != "chorus":
		for _, q := range e.leaves {
			p[q] = false
		}
	}
	return p
}

func none(p [Parts]bool) bool {
	for _, v := range p {
		if v {
			return false
		}
	}
	return true
}

// play plays a section from the composer's first count on.
func (e ensemble) play(c *composer, plan section) {
	melodic := plan
	melodic.parts[Lead], melodic.parts[Voice] = false, false
	for bar := range plan.bars {
		k := e.drums
		if e.nth > 0 && bar%e.nth == e.nth-1 {
			k = e.other
		}
		k.bar(c, bar, plan)
		e.tune.bar(c, bar, melodic)
	}
	for _, part := range []Part{Lead, Voice} {
		if plan.parts[part] {
			e.sing(c, part, float64(plan.bars*c.style.Meter))
		}
	}
}

// sing goes round the melody for some counts; with up its last notes come
// before the first count.
func (e ensemble) sing(c *composer, part Part, counts float64) {
	loop := float64(e.bars * e.unit)
	for at := 0.0; at < counts; at += loop {
		for _, n := range e.line {
			pos := at + c.pos(n.step)
			if pos >= counts {
				break
			}
			c.note(part, pos, float64(n.len)/float64(c.style.Steps), c.harm.note(n.degree)+24, 0.9)
		}
	}
	if !e.up {
		return
	}
	first := c.feel.Beats[0]
	period := c.feel.Beats[1] - first
	for k := 1; k <= 2; k++ { // two eighths before count 1
		if at := first - float64(k)*period/2; at > 0 {
			c.song.Notes = append(c.song.Notes, Note{at, period / 2.2, c.harm.note(k) + 24, 0.8, part})
		}
	}
}
