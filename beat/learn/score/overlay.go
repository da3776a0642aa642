package score

import "slices"

// Overlay invents drums in a style, to be laid over music that has its own
// harmony.
func Overlay(r Rand, style Style, feel Feel) []Note {
	song := Song{}
	c := &composer{r: r, style: style, feel: feel, song: &song, soft: r.Between(0, 0.25)}
	bars := (len(feel.Beats) - 1) / style.Meter
	plan, drums := form(r, style, bars), newKit(r, style)
	for bar := range bars {
		drums.bar(c, bar, at(plan, bar))
	}
	return song.Notes
}

// Vocals invents a sung melody over music of a meter.
func Vocals(r Rand, meter int, feel Feel) []Note {
	style := Style{Meter: meter, Steps: 4}
	song := Song{}
	c := &composer{r: r, style: style, feel: feel, harm: newHarmony(r, style), song: &song}
	t := tune{sung: melody(r, style, r.Between(0.15, 0.4), 0.3), answer: r.Between(0.1, 0.5)}
	sings := true
	for bar := range (len(feel.Beats) - 1) / meter {
		if bar%4 == 0 {
			sings = r.Chance(0.7)
		}
		if sings && !r.Chance(t.answer) {
			t.sing(c, Voice, t.sung, bar, 1)
		}
	}
	return song.Notes
}

// All is every style, those of Styles first.
func All() []Style { return slices.Concat(Styles, Further) }

// Named finds a style.
func Named(name string) (Style, bool) {
	all := All()
	i := slices.IndexFunc(all, func(s Style) bool { return s.Name == name })
	if i < 0 {
		return Style{}, false
	}
	return all[i], true
}
