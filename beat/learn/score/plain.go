package score

import "slices"

// ComposePlain invents a song as plain as can be, of about length [s]: one
// groove, one loop of chords, perhaps a melody, in phrases of 8 bars that are
// marked in one of the ways music has, or not at all. The rules are those of
// pop and dance arrangement, and common practice, no source: a fill leads to
// count 1, a crash stands on it, loops start afresh with a phrase.
func ComposePlain(seed uint64, style Style, length float64) (Song, []Section) {
	r := NewRand(seed, 21)
	start := 0.02
	if r.Chance(0.4) {
		start = r.Between(0.05, 4)
	}
	feel := NewFeel(r, style, start, length)
	if !r.Chance(0.1) { // nearly all of it is made by machines
		feel = steady(r, style, start, length)
	}
	p := &plain{marks: newMarks(r, style), cast: newCast(r, style), all: feel}
	song := Song{Style: style.Name}
	p.composer = composer{r: r, style: style, feel: feel, harm: p.harmony(), song: &song}
	p.composer.soft = Pick(r, []float64{0, 0, 0.1, 0.2})
	sections := p.form(len(feel.Beats) - style.Meter - 1)
	if len(sections) == 0 {
		return song, nil
	}
	first, last := sections[0], sections[len(sections)-1]
	end := last.Beat + last.Counts
	for i, t := range feel.Beats[:end] {
		song.Beats = append(song.Beats, Beat{t, inBar(sections, i, style.Meter)})
	}
	for i, s := range sections {
		p.section(sections, i, s)
	}
	p.leadIn(first.Beat)
	p.ending(end)
	if start > 1 && r.Chance(0.3) {
		p.composer.feel = feel
		p.composer.ambience(start)
	}
	song.Length = feel.Beats[end] + 2
	slices.SortStableFunc(song.Notes, func(a, b Note) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	})
	return song, sections
}

// inBar is the position in its bar of a count: bars start afresh with each
// section.
func inBar(sections []Section, count, meter int) int {
	from := sections[0].Beat
	for _, s := range sections {
		if s.Beat <= count {
			from = s.Beat
		}
	}
	return ((count-from)%meter+meter)%meter + 1
}

// steady is a feel without drift.
func steady(r Rand, style Style, start, length float64) Feel {
	f := Feel{meter: style.Meter, swing: r.Between(style.Swing[0], style.Swing[1]), pair: 0.5}
	if r.Chance(0.5) {
		f.swing = 0.5
	}
	if r.Chance(0.3) {
		f.Jitter = r.Between(0.001, 0.006)
	}
	period := 60 / r.Between(style.BPM[0], style.BPM[1])
	for t := start; t < start+length; t += period {
		f.Beats = append(f.Beats, t)
	}
	return f
}

// plain is a plain song in the making.
type plain struct {
	composer
	marks marks
	cast  ensemble
	all   Feel
}

// phrase is the length of a whole one [counts]: 8 bars, or 16 bars of two.
func (p *plain) phrase() int { return 8 * p.unit() }

// unit is what she counts as a bar: two bars of 6/8.
func (p *plain) unit() int {
	if p.style.Meter == 2 {
		return 4
	}
	return p.style.Meter
}

func (p *plain) harmony() harmony {
	r := p.cast.r
	h := harmony{key: 36 + r.IntN(12), scale: Pick(r, scales), every: p.unitOf(r)}
	n := Pick(r, []int{1, 2, 4, 4, 4, 8, 8}) // bars that the loop lasts
	h.loop = make([]int, n)
	for i := range h.loop {
		h.loop[i] = Pick(r, []int{0, 0, 3, 4, 5, 5, 1, 2, 6})
	}
	if r.Chance(0.7) {
		h.loop[0] = 0 // the chord is home
	}
	if n == 8 && r.Chance(0.5) { // a loop of 4 with another ending
		copy(h.loop[4:], h.loop[:3])
	}
	return h
}

func (p *plain) unitOf(r Rand) int {
	unit := p.cast.unit
	if r.Chance(0.15) {
		return 2 * unit
	}
	return unit
}

// form strings phrases together from a pick-up on.
func (p *plain) form(counts int) []Section {
	r, unit := p.r, p.unit()
	at := 0
	if r.Chance(0.18) {
		at = 1 + r.IntN(unit-1)
	}
	var out []Section
	add := func(bars int, name string) bool {
		if at+bars*unit > counts {
			return false
		}
		out = append(out, Section{Beat: at, Counts: bars * unit, Name: name})
		at += bars * unit
		return true
	}
	if r.Chance(0.4) {
		add(Pick(r, []int{1, 2, 2, 3, 4, 4, 4, 5, 6, 8, 8, 8, 8, 10, 12, 16, 16}), "intro")
	}
	odd := r.Chance(0.35) // odd phrases are rare, and most songs have none
	names := Pick(r, [][]string{
		{"verse"}, {"verse", "chorus"}, {"verse", "verse", "chorus"}, {"verse", "chorus", "chorus"},
		{"verse", "chorus", "break"},
	})
	for i, since := 0, 0; ; i++ {
		name := names[i%len(names)]
		if odd && since >= 1 && r.Chance(0.3) {
			since = 0
			switch o := r.IntN(5); o {
			case 0:
				add(1, "tag")
			case 1:
				add(2, "tag")
			case 2:
				add(4, "bridge")
			case 3:
				add(Pick(r, []int{6, 7}), "cut")
				continue
			default:
				add(Pick(r, []int{10, 12, 4}), "bridge")
			}
		}
		since++
		if !add(8, name) {
			break
		}
	}
	if n := len(out); n > 2 && r.Chance(0.3) { // it ends early
		out[n-1].Counts = unit * (1 + r.IntN(out[n-1].Counts/unit))
	}
	return out
}

// section plays one section with its marks.
func (p *plain) section(all []Section, i int, s Section) {
	from := len(p.song.Notes)
	p.feel.Beats = p.all.Beats[s.Beat:]
	counts := float64(s.Counts)
	plan := section{name: s.Name, bars: s.Counts / p.style.Meter, parts: p.cast.playing(i, s.Name), level: 1}
	if p.marks.swelling && s.Name == "intro" {
		plan.level = 0.6
	}
	p.cast.play(&p.composer, plan)
	next := "" // the name of what follows
	if i+1 < len(all) {
		next = all[i+1].Name
	}
	if m := p.marks.at(p.r, i, s.Name, next); next != "" {
		m.close(&p.composer, from, counts)
	}
	if p.marks.opens(p.r, i, s.Name) {
		p.marks.open(&p.composer, plan)
	}
}

// leadIn plays the counts before the first phrase.
func (p *plain) leadIn(counts int) {
	p.feel.Beats = p.all.Beats
	part := Pick(p.r, []Part{Snare, Tom, Hat, Lead, Bass, Rim})
	for i := range counts {
		if part.Drum() {
			p.hit(part, float64(i), 0.8, 0)
			if p.r.Chance(0.3) {
				p.hit(part, float64(i)+0.5, 0.6, 0)
			}
		} else {
			p.note(part, float64(i), 0.9, p.harm.note(p.r.IntN(7))+24, 0.8)
		}
	}
}

// ending closes the song: as it is, with a last stroke on count 1, or fading.
func (p *plain) ending(count int) {
	p.feel.Beats = p.all.Beats
	at := p.all.Beats[count]
	switch x := p.r.Float64(); {
	case x < 0.25:
		p.hit(Crash, float64(count), 0.9, 0)
		p.hit(Kick, float64(count), 1, 0)
		p.note(Bass, float64(count), 2, p.harm.note(p.harm.loop[0]), 0.9)
		p.song.Beats = append(p.song.Beats, Beat{at, 1})
	case x < 0.35:
		from := p.all.Beats[max(0, count-2*p.phrase())]
		for i, n := range p.song.Notes {
			if n.At > from {
				p.song.Notes[i].Level *= max(0.02, (at-n.At)/(at-from))
			}
		}
	}
}
