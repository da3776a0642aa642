package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

var rhythmTooFast = Check{
	Code:  "rhythm-too-fast",
	Title: "a rhythm is too fast to control on this music",
	Why: "When one way of a repetition is too short, momentum moves the weight instead of muscle, the range shrinks " +
		"and form goes. The faster the music and the longer the path of the weight, the slower the rhythm must be. " +
		"A fast way beside a slow one (3-1, 1-3) has a limit of its own. R is the peak acceleration of the weight as a " +
		"share of gravity, R = π² path/(2 g T²) for a path from rest to rest in T seconds: at 1 it floats at the top, " +
		"and has to be pulled down. It is to be fixed only where the limit is published or your own, or where R is 1 " +
		"and more over the full range; the rest is to be watched.",
	Source: "limits by class of movement: catalogue of moves, from repetition speeds of 1-2 s each way (ACSM position " +
		"stand 2009, Ratamess et al., Med Sci Sports Exerc 41:687) and the peak acceleration R = 0.503 path/T²; " +
		"advice, not a rule",
	Severity: Fix,
	Left:     "a slower rhythm, or a tempo within 5 %, would cost more than to leave it, or is still too fast",
	details: func(c *plan.Catalog) []string {
		var out []string
		for _, class := range c.Classes() {
			out = append(out, limitWords(c.Limits[class]))
		}
		return out
	},
	step: func(j *judge) []Finding {
		var out []Finding
		for i := j.from; i < j.to; i++ {
			if f, ok := j.tooFast(&j.part.rows[i]); ok {
				out = append(out, f)
			}
		}
		return out
	},
}

// limitWords writes a limit out with the peak acceleration it allows.
func limitWords(l plan.Limit) string {
	text := fmt.Sprintf("%s: fine from %s s each way, too fast below %s s",
		l.Class, say.Num(l.Fine, 3), say.Num(l.TooFast, 3))
	for _, w := range []struct {
		name string
		plan.WayLimit
	}{{"down", l.Down}, {"up", l.Up}} {
		if w.Fine > 0 {
			text += fmt.Sprintf("; %s beside a slow way: from %s s", w.name, say.Num(w.Fine, 3))
		}
	}
	if l.Path > 0 {
		text += fmt.Sprintf("; over %s m R is %s and %s",
			say.Num(l.Path, 2), say.Num(l.PeakLoad(l.Fine), 2), say.Num(l.PeakLoad(l.TooFast), 2))
	}
	return fmt.Sprintf("%s (%s: %s)", text, l.Evidence, l.Source)
}

// tooFast judges the rhythm of one row of a set.
func (l *placedClass) tooFast(r *placedRow) (Finding, bool) {
	if r.reps == nil || r.music == nil {
		return Finding{}, false
	}
	set, _ := r.item.Work.(plan.Set)
	p, ok := l.paceOf(set, r.reps.Rhythm, r.tempo())
	if !ok || p.grade() == "" {
		return Finding{}, false
	}
	f := r.about(p.grade())
	way := p.hardest()
	seconds := way.Seconds(p.bpm)
	f.Figures = map[string]float64{
		"seconds_per_phase": seconds, "counts_per_phase": way.Counts, "bpm": p.bpm,
		"limit_fine_seconds": way.Fine, "bpm_that_passes": p.most(), "peak_load": p.limit.PeakLoad(seconds),
	}
	if way.TooFast > 0 {
		f.Figures["limit_too_fast_seconds"] = way.TooFast
	}
	verdict := plan.Borderline
	if f.Severity == Fix {
		verdict = "is " + plan.OutOfReach
	}
	f.Message = fmt.Sprintf("%s, %d x %s at %s BPM: %s s %s %s at %s (fine from %s s)",
		r.Item, r.reps.N, r.Rhythm, say.Num(p.bpm, 1), say.Num(seconds, 2), way.Name, verdict,
		rangeWords(set, r.reps.Rhythm), say.Num(way.Fine, 2))
	f.Source = fmt.Sprintf("%s (%s)", way.Source, way.Evidence)
	f.Fix = say.Ways(l.calmer(set, r, p))
	return f, true
}

func rangeWords(s plan.Set, r plan.Rhythm) string {
	switch {
	case r.Pulse:
		return "pulse range"
	case s.Range == plan.HalfRange:
		return "half range"
	}
	return "full range"
}

// mostWays bounds how many ways out a finding offers: more are not read.
const mostWays = 2

// calmer lists what makes the rhythm easier to control: a smaller range or a
// lighter weight, which leave the music and the counts as they are, then a
// slower rhythm, then music that the class has.
func (l *placedClass) calmer(s plan.Set, r *placedRow, p pace) []string {
	var ways, less []string
	if s.Range != plan.HalfRange && !p.rhythm.Pulse && !p.limit.Ballistic {
		half := s
		half.Range = plan.HalfRange
		if h, ok := l.paceOf(half, p.rhythm, p.bpm); ok && h.grade() == "" {
			less = append(less, "range: half")
		}
	}
	if s.Weight != "" && r.LoadClass != "light" && !p.limit.Ballistic {
		less = append(less, "a lighter weight")
	}
	if len(less) > 0 {
		ways = append(ways, say.Or(less))
	}
	if t, ok := l.slower(s, p.rhythm, p.bpm); ok {
		ways = append(ways, slowerWords(r.reps, t, p.bpm))
	}
	if m := l.slowEnough(p.most(), r); m != nil && len(ways) < mostWays {
		ways = append(ways, fmt.Sprintf("%s (%s BPM)", m.ref.File, say.Num(m.grid.bpm, 1)))
	}
	if len(ways) == 0 {
		ways = append(ways, "another move; or more counts for each")
	}
	return ways
}

// slowerWords says how many repetitions of a slower rhythm take the same
// counts, or the nearest number that is not more.
func slowerWords(reps *plan.Reps, t plan.Rhythm, bpm float64) string {
	counts := reps.N * reps.Rhythm.Counts()
	each := say.Num(float64(t.Down)*60/bpm, 2) + " s each way"
	n := counts / t.Counts()
	switch {
	case n == 0:
		return fmt.Sprintf("%s (%s)", t, each)
	case n*t.Counts() == counts:
		return fmt.Sprintf("%d x %s in the same %s (%s)", n, t, say.Many(counts, "count"), each)
	}
	return fmt.Sprintf("%d x %s in %s, %d fewer (%s)",
		n, t, say.Many(n*t.Counts(), "count"), counts-n*t.Counts(), each)
}

// slowEnough is the fastest other track of the class not above that tempo, and
// not outside what the row's kind of part is taught to.
func (l *placedClass) slowEnough(bpm float64, r *placedRow) *music {
	band, banded := l.catalog().Bands[l.kindOf(r)]
	if !banded { // sets are what strength parts are made of
		band = l.catalog().Bands[plan.Strength]
	}
	var best *music
	for _, p := range l.parts {
		for i := range p.music {
			m := &p.music[i]
			if m.grid == nil || m.ref.File == r.music.ref.File ||
				m.grid.bpm > bpm || !band.Outer.Has(m.grid.bpm) {
				continue
			}
			if best == nil || m.grid.bpm > best.grid.bpm {
				best = m
			}
		}
	}
	return best
}

// kindOf is the kind of part that a row is in.
func (l *placedClass) kindOf(r *placedRow) plan.PartKind {
	for _, p := range l.parts {
		for i := range p.music {
			if &p.music[i] == r.music {
				return p.part.Kind
			}
		}
	}
	return plan.Mixed
}
