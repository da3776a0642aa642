package align

import (
	"fmt"
	"math"

	"onphrase/plan"
	"onphrase/plan/say"
)

var rhythmTooFast = Check{
	Code:  "rhythm-too-fast",
	Title: "a rhythm is too fast to control on this music",
	Why:   "When one way of a repetition is too short, momentum moves the weight instead of muscle, the range shrinks and form goes. The faster the music and the longer the path of the weight, the slower the rhythm must be. R is the peak acceleration of the weight as a share of gravity, R = π² path/(2 g T²) for a path from rest to rest in T seconds: at 1 it floats at the top, and has to be pulled down.",
	Source: "limits by class of movement: catalogue of moves, from repetition speeds of 1-2 s each way (ACSM position stand 2009, Ratamess et al., Med Sci Sports Exerc 41:687) " +
		"and the peak acceleration R = 0.503 path/T²; advice, not a rule",
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
	text := fmt.Sprintf("%s: fine from %s s each way, too fast below %s s", l.Class, say.Num(l.Fine, 3), say.Num(l.TooFast, 3))
	if l.Path > 0 {
		text += fmt.Sprintf("; over %s m R is %s and %s", say.Num(l.Path, 2), say.Num(l.PeakLoad(l.Fine), 2), say.Num(l.PeakLoad(l.TooFast), 2))
	}
	return fmt.Sprintf("%s (%s: %s)", text, l.Evidence, l.Source)
}

// tooFast judges the rhythm of one row of a set.
func (l *placedClass) tooFast(r *placedRow) (Finding, bool) {
	if r.reps == nil || r.music == nil {
		return Finding{}, false
	}
	set, _ := r.item.Work.(plan.Set)
	p, ok := l.paceOf(set, r.reps.Rhythm, r.music.grid.tempo(r.from, r.to))
	if !ok || p.grade() == "" {
		return Finding{}, false
	}
	f := r.about(p.grade())
	seconds, counts := p.fastest()
	f.Figures = map[string]float64{
		"seconds_per_phase": seconds, "counts_per_phase": counts, "bpm": p.bpm,
		"limit_fine_seconds": p.limit.Fine, "limit_too_fast_seconds": p.limit.TooFast, "bpm_that_passes": math.Floor(p.most()),
		"peak_load": p.limit.PeakLoad(seconds),
	}
	verdict := "may be hard to control"
	if f.Severity == Fix {
		verdict = "is likely hard to control"
	}
	f.Message = fmt.Sprintf("%s, %d x %s at %s BPM: %s s %s %s for this move at %s (fine from %s s, too fast below %s s)",
		r.Item, r.reps.N, r.Rhythm, say.Num(p.bpm, 1), say.Num(seconds, 2), way(r.reps.Rhythm, counts), verdict, rangeWords(set, r.reps.Rhythm), say.Num(p.limit.Fine, 2), say.Num(p.limit.TooFast, 2))
	f.Source = fmt.Sprintf("%s (%s)", p.limit.Source, p.limit.Evidence)
	f.Fix = say.Ways(l.calmer(set, r, p))
	return f, true
}

// way names the fastest way of a repetition.
func way(r plan.Rhythm, counts float64) string {
	switch {
	case r.Pulse, r.Down == r.Up:
		return "each way"
	case float64(r.Down) == counts:
		return "down"
	}
	return "up"
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

// calmer lists what would make the rhythm fine, the smallest change first.
func (l *placedClass) calmer(s plan.Set, r *placedRow, p pace) []string {
	var ways []string
	if t, ok := l.slower(s, p.rhythm, p.bpm); ok {
		ways = append(ways, slowerWords(r.reps, t, p.bpm))
	}
	if s.Range != plan.HalfRange && !p.rhythm.Pulse {
		half := s
		half.Range = plan.HalfRange
		if h, ok := l.paceOf(half, p.rhythm, p.bpm); ok && h.grade() == "" {
			ways = append(ways, "range: half")
		}
	}
	ways = append(ways, fmt.Sprintf("music of at most %s BPM", say.Num(math.Floor(p.most()), 0)))
	if m := l.slowEnough(p.most(), r.music); m != nil {
		ways[len(ways)-1] += fmt.Sprintf(", such as %s (%s BPM)", m.ref.File, say.Num(m.grid.bpm, 1))
	}
	return ways
}

// slowerWords says how many repetitions of a slower rhythm take the same
// counts, or the nearest number that is not more.
func slowerWords(reps *plan.Reps, t plan.Rhythm, bpm float64) string {
	counts := reps.N * reps.Rhythm.Counts()
	s, _ := pace{rhythm: t, bpm: bpm}.fastest()
	n := counts / t.Counts()
	switch {
	case n == 0:
		return fmt.Sprintf("%s (%s s %s)", t, say.Num(s, 2), way(t, phases(t)[0]))
	case n*t.Counts() == counts:
		return fmt.Sprintf("%d x %s in the same %s (%s s each way)", n, t, say.Many(counts, "count"), say.Num(s, 2))
	}
	return fmt.Sprintf("%d x %s in %s, %d fewer (%s s each way)", n, t, say.Many(n*t.Counts(), "count"), counts-n*t.Counts(), say.Num(s, 2))
}

// slowEnough is the fastest other track of the class not above that tempo.
func (l *placedClass) slowEnough(bpm float64, but *music) *music {
	var best *music
	for _, p := range l.parts {
		for i := range p.music {
			m := &p.music[i]
			if m.grid == nil || m.ref.File == but.ref.File || m.grid.bpm > bpm {
				continue
			}
			if best == nil || m.grid.bpm > best.grid.bpm {
				best = m
			}
		}
	}
	return best
}
