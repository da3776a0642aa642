package score

// marks are the ways in which a plain song shows where its phrases start.
type marks struct {
	crash, boom bool
	each        int     // every so many-th phrase is marked
	sure        float64 // chance that such a phrase is
	swelling    bool    // the intro is soft
	fill        int     // counts
	fills       []Part  // by whom
	density     int     // strokes a count
	alone       bool    // the groove pauses for the fill
	half        bool    // a small fill half way through, too
	swell       int     // counts of a sound that grows until count 1
	drop        int     // counts without drums
	hush        int     // counts without anything
}

func newMarks(r Rand, s Style) marks {
	m := marks{each: Pick(r, []int{1, 1, 1, 1, 2}), sure: Pick(r, []float64{1, 1, 1, 0.8, 0.6}), swelling: r.Chance(0.3)}
	if r.Chance(0.12) {
		return m // nothing tells
	}
	m.crash = r.Chance(0.55)
	m.boom = r.Chance(0.15)
	if r.Chance(0.5) {
		m.fill = Pick(r, []int{1, 2, 2, 3, 4, 4, 4, 6, 8})
		m.fills = Pick(r, [][]Part{
			{Snare}, {Snare}, {Snare}, {Tom}, {Snare, Tom}, {Kick}, {Clap}, {Hat}, {Snare, Kick}, {Rim}, {Conga},
		})
		m.density = Pick(r, []int{1, 2, 2, s.Steps, s.Steps})
		m.alone, m.half = r.Chance(0.5), r.Chance(0.2)
	}
	if r.Chance(0.2) {
		m.swell = Pick(r, []int{2, 4, 4, 8})
	}
	if r.Chance(0.2) {
		m.drop = Pick(r, []int{1, 2, 4, 4, 8})
	}
	if r.Chance(0.12) {
		m.hush = Pick(r, []int{1, 1, 2, 3, 4})
	}
	return m
}

// at are the marks at the end of a section, given the name of what follows.
func (m marks) at(r Rand, i int, name, next string) marks {
	if name != "intro" && next != "tag" && ((i+1)%m.each != 0 || !r.Chance(m.sure)) {
		return marks{}
	}
	return m
}

// opens says whether a section begins with its marks.
func (m marks) opens(r Rand, i int, name string) bool {
	return name != "intro" && i%m.each == 0 && r.Chance(m.sure) || name == "intro" && r.Chance(0.2)
}

// open marks count 1.
func (m marks) open(c *composer, plan section) {
	if m.crash {
		c.hit(Crash, 0, 0.9, 0)
		if !plan.parts[Kick] {
			c.hit(Kick, 0, 0.9, 0)
		}
	}
	if m.boom {
		c.hit(Tom, 0, 1, 0)
		c.note(Bass, 0, 3, float64(c.harm.key)-12, 1)
	}
}

// close marks the end of a section: its notes are those from one index on.
func (m marks) close(c *composer, from int, counts float64) {
	fill, drop, hush := min(counts/2, float64(m.fill)), min(counts/2, float64(m.drop)), min(counts/2, float64(m.hush))
	quiet := func(start float64, who func(Part) bool) {
		at, kept := c.feel.At(start)-0.02, c.song.Notes[:from]
		for _, n := range c.song.Notes[from:] {
			if n.At < at || !who(n.Part) {
				if n.At < at && n.At+n.Len > at && who(n.Part) {
					n.Len = at - n.At
				}
				kept = append(kept, n)
			}
		}
		c.song.Notes = kept
	}
	if drop > 0 {
		quiet(counts-drop, Part.Drum)
	}
	if hush > 0 {
		quiet(counts-hush, func(Part) bool { return true })
		return
	}
	if fill > 0 {
		if m.alone {
			quiet(counts-fill, func(p Part) bool { return p.Drum() && p != Hat })
		}
		m.run(c, counts-fill, fill)
		if m.half && counts >= 16 {
			m.run(c, counts/2-min(2, fill), min(2, fill))
		}
	}
	if m.swell > 0 && float64(m.swell) < counts {
		c.note(Riser, counts-float64(m.swell), float64(m.swell), 0, 0.8)
	}
}

// run is the fill: strokes that grow, going from player to player.
func (m marks) run(c *composer, from, counts float64) {
	n := int(counts) * m.density
	for i := range n {
		part := m.fills[i*len(m.fills)/n]
		c.hit(part, from+float64(i)/float64(m.density), 0.5+0.5*float64(i+1)/float64(n), 0)
	}
}
