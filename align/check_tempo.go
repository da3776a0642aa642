package align

import (
	"fmt"
	"math"

	"onphrase/plan"
)

// band is the tempo that suits a kind of part [BPM]. Inside is what most
// published figures agree on, outer what any of them allows.
type band struct {
	inLow, inHigh, outLow, outHigh float64
	source                         string
}

// bands by kind of part. A mixed part has none: its items decide.
//
// Ref: trade.md section 2. The published figures disagree; the bands are our
// reading of them.
var bands = map[plan.PartKind]band{
	plan.WarmUp: {120, 135, 118, 136,
		"a university's aerobics guidelines 125-135; instructors' pages 118-136"},
	plan.Cardio: {122, 150, 100, 160,
		"a certification text (quoted 2012, 2013) 122-129 low to mid impact, 130-160 high; instructors' pages up to 145 low, 130-155 high"},
	plan.Strength: {122, 130, 100, 132,
		"a certification text (quoted 2012, 2013) 122-129; an instructor resource 124-130; an instructor's page 100-130s; no trial sets a limit"},
	plan.Core: {100, 130, 80, 132,
		"instructors' pages about 130, mat work 80-110"},
	plan.CoolDown: {0, 100, 0, 110,
		"a certification text (quoted 2012, 2013) below 100; instructors' pages 80-110"},
	plan.Stretch: {0, 100, 0, 110,
		"a certification text (quoted 2012, 2013) below 100; instructors' pages 80-110"},
}

var tempoBand = Check{
	Code:     "tempo-outside-band",
	Title:    "the music is faster or slower than this kind of part usually is",
	Why:      "Too fast, people shorten their range to keep up; too slow, the part does not reach its intensity. The move and its rhythm decide more than the part does.",
	Source:   "published tempo bands; they disagree with each other",
	Severity: Watch,
	find: func(l *layout) []Finding {
		var out []Finding
		for _, p := range l.parts {
			b, ok := bands[p.part.Kind]
			if !ok {
				continue
			}
			for i := range p.music {
				if m := &p.music[i]; m.used {
					if f, ok := l.outside(p, m, b); ok {
						out = append(out, f)
					}
				}
			}
		}
		return out
	},
}

func (l *layout) outside(p *partLayout, m *music, b band) (Finding, bool) {
	bpm := math.Round(m.grid.bpm*m.grid.speed*10) / 10
	grade := Note
	switch {
	case bpm >= b.inLow && bpm <= b.inHigh:
		return Finding{}, false
	case bpm < b.outLow || bpm > b.outHigh:
		grade = Watch
	}
	f := p.about(grade, m.ref.Pos.Line)
	for i := range p.rows {
		if p.rows[i].music == m {
			f.Row = p.rows[i].Row.Row
			break
		}
	}
	f.Figures = map[string]float64{"bpm": bpm, "band_low_bpm": b.inLow, "band_high_bpm": b.inHigh, "outer_low_bpm": b.outLow, "outer_high_bpm": b.outHigh}
	f.Source = b.source
	f.Message = fmt.Sprintf("%s at %s BPM is outside %s, the usual tempo of a %s part", m.ref.File, num(bpm, 1), b.words(), p.part.Kind)
	if b.inLow == 0 {
		f.Message = fmt.Sprintf("%s at %s BPM is above %s BPM, the usual tempo of a %s part is below", m.ref.File, num(bpm, 1), num(b.inHigh, 0), p.part.Kind)
	}
	f.Fix = or(l.inside(p.part, m, b))
	return f, true
}

func (b band) words() string {
	if b.inLow == 0 {
		return fmt.Sprintf("up to %s BPM", num(b.inHigh, 0))
	}
	return fmt.Sprintf("%s-%s BPM", num(b.inLow, 0), num(b.inHigh, 0))
}

// smallStretch is the change of tempo that fits a song to a class unnoticed;
// up to largeStretch it usually still sounds clean.
//
// Ref: trade.md section 6.
const smallStretch, largeStretch = 0.05, 0.10

// inside lists ways to a tempo that suits.
func (l *layout) inside(part *plan.Part, m *music, b band) []string {
	var ways []string
	now := m.grid.bpm * m.grid.speed
	if part.Taught == plan.AsHeard {
		for _, t := range []struct {
			as plan.Taught
			by float64
		}{{plan.Half, 0.5}, {plan.Double, 2}} {
			if v := now * t.by; v >= b.inLow && v <= b.inHigh {
				ways = append(ways, fmt.Sprintf("taught: %s (%s BPM)", t.as, num(v, 1)))
			}
		}
	}
	goal := min(max(now, b.inLow), b.inHigh)
	if change := goal/m.grid.bpm - 1; math.Abs(change) <= smallStretch {
		ways = append(ways, fmt.Sprintf("bpm: %s (%s of the recorded tempo)", num(goal, 0), percent(change)))
	}
	for _, p := range l.parts {
		for i := range p.music {
			o := &p.music[i]
			if o.grid != nil && o.ref.File != m.ref.File && o.grid.bpm >= b.inLow && o.grid.bpm <= b.inHigh {
				return append(ways, fmt.Sprintf("another track, such as %s (%s BPM)", o.ref.File, num(o.grid.bpm, 1)))
			}
		}
	}
	return append(ways, fmt.Sprintf("another track of %s", b.words()))
}

func percent(change float64) string { return fmt.Sprintf("%+.1f %%", 100*change) }

var tempoStretch = Check{
	Code:     "tempo-stretched",
	Title:    "a track is played much faster or slower than recorded",
	Why:      "Beyond about ten per cent, music played at another tempo with its pitch kept starts to sound smeared.",
	Source:   "common practice; trade pages: about 10 % either way is usually clean",
	Severity: Watch,
	find: func(l *layout) []Finding {
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
				f.Figures = map[string]float64{"bpm_recorded": g.bpm, "bpm_played": g.bpm * g.speed, "change_percent": 100 * (g.speed - 1)}
				f.Message = fmt.Sprintf("%s is recorded at %s BPM and played at %s, %s", m.ref.File, num(g.bpm, 1), num(g.bpm*g.speed, 1), percent(g.speed-1))
				f.Fix = fmt.Sprintf("stay within %s-%s BPM", num(math.Ceil(low), 0), num(math.Floor(high), 0))
				out = append(out, f)
			}
		}
		return out
	},
}
