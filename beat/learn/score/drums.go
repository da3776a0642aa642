package score

import "strings"

// kit is the drummer's part of a song.
type kit struct {
	grooves []groove
	fills   float64 // chance of a fill at the end of a phrase
	crash   float64 // chance of a crash at its start
	rides   bool    // the ride takes over from the hats in the chorus
	open    string  // steps on which the open hat plays
}

func newKit(r Rand, s Style) kit {
	late := func() float64 {
		if r.Chance(0.7) {
			return 0
		}
		return r.Between(-0.004, 0.012)
	}
	back := Snare
	if s.Sound == Electronic && r.Chance(0.5) {
		back = Clap
	} else if r.Chance(0.07) {
		back = Rim
	}
	k := kit{fills: r.Between(0, 0.8), crash: r.Between(0, 0.9), rides: r.Chance(0.3),
		open: Pick(r, []string{"..x.", "................", "..............x.", "......x........."})}
	k.grooves = []groove{
		{Kick, borrow(r, s, func(s Style) []string { return s.Kick }, 0.12), r.Between(0, 0.3), 0},
		{back, borrow(r, s, func(s Style) []string { return s.Snare }, 0.12), r.Between(0, 0.3), late()},
		{Hat, borrow(r, s, func(s Style) []string { return s.Hat }, 0.3), r.Between(0, 0.3), late()},
		{Pick(r, []Part{Conga, Bell, Rim, Shaker, Tom}), borrow(r, s, func(s Style) []string { return s.Perc }, 0.1), 0.2,
			late()},
	}
	if back == Clap && r.Chance(0.4) {
		layer := k.grooves[1]
		layer.part = Snare
		k.grooves = append(k.grooves, layer)
	}
	if r.Chance(0.35) {
		k.grooves = append(k.grooves, groove{Shaker, Pick(r, []string{"xxxx", "xoxo", "x.x.", "..x."}), 0, late()})
	}
	if s.Steps == 3 {
		for i := range k.grooves {
			if k.grooves[i].part == Shaker {
				k.grooves[i].pattern = "xox"
			}
		}
		k.open = Pick(r, []string{"............", "..........x."})
	}
	return k
}

// plays reports whether a part of the kit sounds in a section.
func plays(p Part, sec section) bool {
	switch p {
	case Clap, Rim:
		return sec.parts[Snare]
	case Bell, Tom:
		return sec.parts[Conga]
	}
	return sec.parts[p]
}

// bar appends one bar of drums.
func (k kit) bar(c *composer, bar int, sec section) {
	last := bar == sec.from+sec.bars-1
	n := c.style.Meter * c.style.Steps
	fill := last && sec.parts[Snare] && c.r.Chance(k.fills)
	fillFrom := n
	if fill {
		fillFrom = n - Pick(c.r, []int{c.style.Steps, c.style.Steps, 2 * c.style.Steps, n})
	}
	for _, g := range k.grooves {
		if !plays(g.part, sec) {
			continue
		}
		if g.vary > 0 && c.r.Chance(g.vary*0.5) {
			g.pattern = mutate(c.r, stretch(g.pattern, n), c.style.Steps)
		}
		if g.part == Hat && k.rides && sec.name == "chorus" {
			g.part = Ride
		}
		for i := range n {
			if i >= fillFrom && g.part != Hat {
				break
			}
			c.drum(g, bar*n+i)
		}
	}
	if sec.parts[OpenHat] && strings.Contains(k.open, "x") {
		for i := range n {
			c.drum(groove{part: OpenHat, pattern: k.open}, bar*n+i)
		}
	}
	if sec.name == "build" {
		k.roll(c, bar, sec)
	} else if fill {
		k.fill(c, bar, fillFrom, n)
	}
	if bar == sec.from && (sec.parts[Kick] || sec.parts[Crash]) && c.r.Chance(k.crash) {
		c.hit(Crash, float64(bar*c.style.Meter), 0.8, 0)
	}
}

// fill plays a run over toms or snare.
func (k kit) fill(c *composer, bar, from, to int) {
	part := Pick(c.r, []Part{Snare, Tom, Tom, Kick})
	density := c.r.Between(0.4, 1)
	for i := from; i < to; i++ {
		if c.r.Chance(density) {
			c.hit(part, c.pos(bar*to+i), c.r.Between(0.5, 1), 0)
		}
	}
}

// roll is the accelerating snare of a build-up: counts, halves, quarters.
func (k kit) roll(c *composer, bar int, sec section) {
	part := Pick(c.r, []Part{Snare, Clap, Kick})
	done := float64(bar-sec.from) / float64(sec.bars)
	per := 1
	if done >= 0.5 {
		per = 2
	}
	if done >= 0.75 {
		per = c.style.Steps
	}
	for i := range c.style.Meter * per {
		c.hit(part, float64(bar*c.style.Meter)+float64(i)/float64(per), 0.4+0.5*done, 0)
	}
}
