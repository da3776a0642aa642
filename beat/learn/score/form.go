package score

// section is a stretch of a song with the same parts playing.
type section struct {
	name  string
	from  int // first bar
	bars  int
	parts [Parts]bool
	level float64
}

// form strings sections together until bars are full. Most last 8 bars; now
// and then there is a short one, a tag.
func form(r Rand, s Style, bars int) []section {
	var out []section
	names := []string{"intro", "verse", "chorus", "verse", "chorus", "break", "build", "chorus", "solo", "chorus"}
	if r.Chance(0.4) { // an excerpt from the middle of a song
		names = names[1+r.IntN(5):]
	}
	for bar, i := 0, 0; bar < bars; i++ {
		name := names[i%len(names)]
		if i >= len(names) {
			name = Pick(r, names[len(names)-1:])
		}
		n := []int{8, 4, 16, 2, 6, 1, 12}[r.Weighted([]float64{62, 16, 8, 3, 4, 4, 3})]
		if name == "build" {
			n = Pick(r, []int{2, 4, 4, 8})
		}
		if s.Sound == Soft && (name == "break" || name == "build") {
			name = "verse"
		}
		out = append(out, section{name: name, from: bar, bars: n, parts: cast(r, s, name), level: r.Between(0.7, 1)})
		bar += n
	}
	return out
}

// cast says which parts play in a section.
func cast(r Rand, s Style, name string) [Parts]bool {
	var p [Parts]bool
	on := func(chance float64, parts ...Part) {
		for _, part := range parts {
			p[part] = p[part] || r.Chance(chance)
		}
	}
	switch name {
	case "intro":
		on(0.4, Kick, Hat, Snare, Shaker, Conga, Bass, Chord, Pad, Arp, Lead)
		on(1, Pick(r, []Part{Kick, Chord, Arp, Bass, Hat, Pad}))
	case "break":
		on(0.12, Hat, Shaker, Bass, Snare)
		on(0.55, Pad, Chord, Arp, Lead, Voice)
		on(1, Pick(r, []Part{Chord, Pad, Arp, Lead}))
	case "build":
		on(0.5, Kick, Hat, Pad, Chord, Arp, Riser, Bass)
		on(1, Pick(r, []Part{Snare, Kick, Hat}))
	case "chorus":
		on(0.96, Kick, Snare, Hat, Bass)
		on(0.75, Chord)
		on(0.45, Pad, Arp, Lead, Voice, Shaker, Conga, OpenHat, Crash)
	default:
		on(0.88, Kick, Snare, Hat, Bass)
		on(0.6, Chord)
		on(0.3, Pad, Arp, Lead, Voice, Shaker, Conga, OpenHat)
	}
	if s.Sound == Soft {
		for d := Kick; d < Bass; d++ {
			p[d] = false
		}
		on(1, Pick(r, []Part{Chord, Arp, Bass}))
	}
	return p
}

// at finds the section of a bar.
func at(form []section, bar int) section {
	for _, s := range form {
		if bar < s.from+s.bars {
			return s
		}
	}
	return form[len(form)-1]
}
