package score

// Section is a stretch of a song as its arranger thought of it: 8 bars or, now
// and then, an odd number.
type Section struct {
	Beat   int // index of its first count in Song.Beats
	Counts int
	Name   string
}

// role is what a section of one name plays each time it comes.
type role struct {
	parts [Parts]bool
	level float64
	loop  []int // chords
	tune  tune
}

// ComposePhrased invents a song of about length [s] like Compose, but of
// sections that are meant: what has the same name sounds the same, and chords,
// melody and drum patterns start afresh with every section. Sections are 8
// bars, or what songs have instead: 16, 4, 6 and 12 bars, and tags of 1 or 2.
// Half of the songs hardly change their arrangement from section to section.
func ComposePhrased(seed uint64, style Style, length float64) (Song, []Section) {
	r := NewRand(seed, 3)
	start := 0.02
	if r.Chance(0.35) {
		start = r.Between(0.05, 8)
	}
	song := Song{Style: style.Name, Length: length}
	c := &composer{r: r, style: style, feel: NewFeel(r, style, start, length-0.3), harm: newHarmony(r, style), song: &song,
		soft: r.Between(0, 0.25)}
	pickUp := 0
	if r.Chance(0.25) {
		pickUp = 1 + r.IntN(max(1, style.Meter-1))
	}
	all := c.feel
	for i, t := range all.Beats {
		song.Beats = append(song.Beats, Beat{t, (i-pickUp+style.Meter)%style.Meter + 1})
	}
	for i := range pickUp {
		c.drumAt(Pick(r, []Part{Hat, Snare, Kick, Rim}), all.Beats[i], 0.7)
	}
	roles, drums := newRoles(r, style), newKit(r, style)
	sections := Sequence(r, style.Meter, pickUp, len(all.Beats))
	for _, s := range sections {
		c.feel.Beats = all.Beats[s.Beat:]
		c.section(roles[s.Name], drums, s)
	}
	if start > 1 {
		c.ambience(start)
	}
	return song, sections
}

// section plays one section, from the first of the composer's counts on.
func (c *composer) section(p role, drums kit, s Section) {
	c.harm.loop = p.loop
	plan := section{name: s.Name, bars: s.Counts / c.style.Meter, parts: p.parts, level: p.level}
	for bar := range plan.bars {
		if c.style.Sound != Soft {
			drums.bar(c, bar, plan)
		}
		p.tune.bar(c, bar, plan)
	}
}

// odd are the lengths that a section may have instead of 8 bars, and how often.
var odd = []struct {
	name   string
	bars   int
	weight float64
}{{"", 8, 74}, {"", 16, 6}, {"bridge", 4, 6}, {"", 12, 2}, {"", 6, 2}, {"tag", 1, 6}, {"tag", 2, 4}}

// Sequence strings sections together, of bars of some counts, from a count on until
// the counts are used up. A tag stands between two sections.
func Sequence(r Rand, meter, from, counts int) []Section {
	names := []string{"intro", "verse", "chorus", "verse", "chorus", "break", "build", "chorus", "verse", "chorus"}
	if r.Chance(0.4) {
		names = names[1+r.IntN(4):]
	}
	weights := make([]float64, len(odd))
	for i, o := range odd {
		weights[i] = o.weight
	}
	var out []Section
	for i := 0; ; {
		o := odd[r.Weighted(weights)]
		name := o.name
		if name == "tag" && (len(out) == 0 || out[len(out)-1].Name == "tag") {
			continue
		}
		if name == "" {
			name = names[i%len(names)]
			i++
		}
		if from+o.bars*meter > counts {
			return out
		}
		out = append(out, Section{Beat: from, Counts: o.bars * meter, Name: name})
		from += o.bars * meter
	}
}

// newRoles invents what each section plays.
func newRoles(r Rand, s Style) map[string]role {
	out := map[string]role{}
	even := r.Chance(0.5) // the arrangement hardly changes
	first := role{parts: cast(r, s, "verse"), level: r.Between(0.7, 1), loop: Pick(r, loops), tune: newTune(r, s)}
	for _, name := range []string{"intro", "verse", "chorus", "break", "build", "bridge", "tag"} {
		p := role{parts: first.parts, level: first.level, loop: first.loop, tune: first.tune}
		if even {
			i := Pick(r, []Part{Hat, Chord, Pad, Arp, Lead, Voice, Shaker})
			p.parts[i] = !p.parts[i] && name != "tag"
		} else {
			p.parts, p.level = cast(r, s, name), r.Between(0.7, 1)
		}
		if name != "tag" && r.Chance(0.5) {
			p.loop = Pick(r, loops)
			p.tune.motif, p.tune.sung = melody(r, s, r.Between(0.15, 0.6), 0), melody(r, s, r.Between(0.15, 0.4), 0.3)
		}
		out[name] = p
	}
	return out
}
