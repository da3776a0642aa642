package align

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"onphrase/plan"
	"onphrase/plan/say"
)

// publishedTempos are the figures that the bands were read from, and where
// they disagree [BPM]. Read second-hand where it says quoted; the others in
// the source or its abstract.
var publishedTempos = []struct{ what, says string }{
	{"low impact", "up to 122, or 122-129 (a certification text of about 2011, quoted with the same figures by two " +
		"students), against 145 (Parker, Australian Fitness Network)"},
	{"high impact and floor choreography",
		"130-160 (the certification text), 130-155 (Franklin, an instructor's video), 140 rising to 155 through the " +
			"class (Parker), 134-158 (an instructor's page)"},
	{"step", "118-128 by the height of the step, as maximums (a maker's guidelines, 1997, quoted); 126 at most (AFAA " +
		"step manual 2005, quoted); up to 135 for advanced classes (AFAA 2010, quoted); 134.6 +- 4.7 observed in 100 " +
		"classes, with more impact above 135 (PMC2465063)"},
	{"kickboxing", "below 140: more injuries in instructors above it than at 125-139 (J Strength Cond Res 2003, " +
		"17:580-6, quoted); 130-138 (an instructors' page), 130-160 (the certification text), 150s (an instructor's " +
		"page)"},
	{"strength", "122-129 (the certification text), 124-130 (an instructor resource), 100-130s (an instructor's " +
		"page, 2016); a trial of 12 weeks used about 128 (Safikhani et al.), which is no limit; no trial sets one"},
	{"classes in water", "122-129 (the certification text) against 130-155 at half time (AEA manual of about 2000, " +
		"quoted), about 135 (AEA magazine, December 2022): the unit differs"},
	{"seated classes", "up to 170 against below 150 (two books quoted by one page)"},
	{"cool-down, stretch", "below 100 (the certification text), 80-110 (an instructor's page, 2016)"},
}

var tempoBand = Check{
	Code:  "tempo-outside-band",
	Title: "the music is faster or slower than this kind of part usually is",
	Why: "Too fast, people shorten their range to keep up; too slow, the part does not reach its intensity. The " +
		"move and its rhythm decide more than the part does.",
	Source:   "published tempo bands; they disagree with each other",
	Severity: Watch,
	Left:     "takes other music, or a tempo farther from the recording",
	details: func(c *plan.Catalog) []string {
		var out []string
		for _, kind := range kindsInOrder {
			b := c.Bands[kind]
			out = append(out, fmt.Sprintf("%s: %s BPM, %s at the outside: %s", kind, b.Inside, b.Outer, b.Source))
		}
		for _, p := range publishedTempos {
			out = append(out, fmt.Sprintf("published for %s [BPM]: %s", p.what, p.says))
		}
		return out
	},
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			b, ok := l.catalog().Bands[p.part.Kind]
			if !ok {
				continue
			}
			out = append(out, l.outsideOf(p, b)...)
		}
		return out
	},
}

// outsideOf makes one finding of the tracks of a part that are outside by as
// much.
func (l *placedClass) outsideOf(p *placedPart, b plan.Band) []Finding {
	var out []Finding
	for i := range p.music {
		m := &p.music[i]
		if !m.used {
			continue
		}
		f, ok := l.outside(p, m, b)
		if !ok {
			continue
		}
		same := slices.IndexFunc(out, func(was Finding) bool { return was.Severity == f.Severity })
		if same < 0 {
			out = append(out, f)
			continue
		}
		all := &out[same]
		all.Also = append(all.Also, f.Row)
		head, _, _ := strings.Cut(all.Message, "; and ")
		all.Message = fmt.Sprintf("%s; and %s of the part", head, say.Many(len(all.Also), "more track"))
	}
	return out
}

func (l *placedClass) outside(p *placedPart, m *music, b plan.Band) (Finding, bool) {
	played, _, _ := p.tempoOn(m)
	bpm := math.Round(played*10) / 10
	grade := Note
	switch {
	case b.Inside.Has(bpm):
		return Finding{}, false
	case bpm < b.Inside.Low && l.hurriedOn(p, m):
		return Finding{}, false // faster music would make it worse
	case !b.Outer.Has(bpm):
		grade = Watch
	}
	f := p.about(grade, m.ref.Pos.Line)
	for i := range p.rows {
		if p.rows[i].music == m {
			f.Row = p.rows[i].Row.Row
			break
		}
	}
	f.Figures = map[string]float64{"bpm": bpm, "band_low_bpm": b.Inside.Low, "band_high_bpm": b.Inside.High,
		"outer_low_bpm": b.Outer.Low, "outer_high_bpm": b.Outer.High}
	f.Source = b.Source
	f.Message = fmt.Sprintf("%s at %s BPM is outside %s, the usual tempo of a %s part", m.ref.File, say.Num(bpm, 1),
		b.Inside.String()+" BPM", p.part.Kind)
	if b.Inside.Low == 0 {
		f.Message = fmt.Sprintf("%s at %s BPM is above %s BPM, the usual tempo of a %s part is below", m.ref.File,
			say.Num(bpm, 1), say.Num(b.Inside.High, 0), p.part.Kind)
	}
	f.Fix = say.Ways(l.inside(p.part, m, b))
	return f, true
}

// hurriedOn reports whether a rhythm is too fast already for the music it is on.
func (l *placedClass) hurriedOn(p *placedPart, m *music) bool {
	for i := range p.rows {
		if p.rows[i].music == m {
			if _, fast := l.tooFast(&p.rows[i]); fast {
				return true
			}
		}
	}
	return false
}

// smallStretch is the change of tempo that fits a song to a class unnoticed;
// up to largeStretch it usually still sounds clean.
//
// Common practice, no source: trade pages call about 10 % either way clean.
const smallStretch, largeStretch = 0.05, 0.10

// inside lists ways to a tempo that suits.
func (l *placedClass) inside(part *plan.Part, m *music, b plan.Band) []string {
	var ways []string
	now := m.grid.bpm * m.grid.speed
	if part.Taught == plan.AsHeard {
		for _, t := range []struct {
			as plan.Taught
			by float64
		}{{plan.Half, 0.5}, {plan.Double, 2}} {
			if v := now * t.by; b.Inside.Has(v) {
				ways = append(ways, fmt.Sprintf("taught: %s (%s BPM)", t.as, say.Num(v, 1)))
			}
		}
	}
	goal := min(max(now, b.Inside.Low), b.Inside.High)
	if change := goal/m.grid.bpm - 1; math.Abs(change) <= smallStretch {
		ways = append(ways, fmt.Sprintf("bpm: %s (%s of the recorded tempo)", say.Num(goal, 0), percent(change)))
	}
	for _, p := range l.parts {
		for i := range p.music {
			o := &p.music[i]
			if o.grid != nil && o.ref.File != m.ref.File && b.Inside.Has(o.grid.bpm) {
				return append(ways, fmt.Sprintf("another track, such as %s (%s BPM)", o.ref.File,
					say.Num(o.grid.bpm, 1)))
			}
		}
	}
	return append(ways, fmt.Sprintf("another track of %s", b.Inside.String()+" BPM"))
}

func percent(change float64) string { return fmt.Sprintf("%+.1f %%", 100*change) }

var tempoStretch = Check{
	Code:     "tempo-stretched",
	Title:    "a track is played much faster or slower than recorded",
	Why:      "Beyond about ten per cent, music played at another tempo with its pitch kept starts to sound smeared.",
	Source:   "common practice; trade pages: about 10 % either way is usually clean",
	Severity: Watch,
	Left:     "the tempo is as you wrote it",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			for i := range p.music {
				m := &p.music[i]
				if !m.used || ms(math.Abs(m.grid.speed-1)) <= largeStretch {
					continue
				}
				f := p.about(Watch, m.ref.Pos.Line)
				g := m.grid
				low, high := g.bpm*(1-largeStretch), g.bpm*(1+largeStretch)
				f.Figures = map[string]float64{"bpm_recorded": g.bpm, "bpm_played": g.bpm * g.speed,
					"change_percent": 100 * (g.speed - 1)}
				f.Message = fmt.Sprintf("%s is recorded at %s BPM and played at %s, %s", m.ref.File, say.Num(g.bpm, 1),
					say.Num(g.bpm*g.speed, 1), percent(g.speed-1))
				f.Fix = fmt.Sprintf("stay within %s-%s BPM", say.Num(math.Ceil(low), 0), say.Num(math.Floor(high), 0))
				out = append(out, f)
			}
		}
		return out
	},
}
