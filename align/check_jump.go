package align

import (
	"fmt"
	"math"
	"strings"

	"onphrase/plan/say"
)

// feltJump is the difference of tempo from which people feel a change.
//
// Ref: Drake & Botte 1993: steps of 1.5-3 % in steady sequences.
const feltJump = 0.03

var tempoJump = Check{
	Code:     "tempo-jump",
	Title:    "the tempo jumps from one track to the next within a part, or between parts of one kind",
	Why:      "The same moves suddenly come faster or slower, with no new start to set it apart.",
	Source:   "Drake & Botte 1993: listeners notice steps of about 1.5-3 %",
	Severity: Note,
	Left:     "takes other music, or another order of the parts",
	find: func(l *placedClass) []Finding {
		var out []Finding
		var last *placedRow
		var before *placedPart
		l.each(func(p *placedPart, _ int, r *placedRow) {
			switch {
			case r.music == nil || r.Kind == PauseRow:
				last = nil // a pause sets what follows apart
				return
			case !r.Kind.Work():
				return
			}
			if last != nil && last.music != r.music && p.part.Kind == before.part.Kind && last.Kind == r.Kind {
				if f, ok := jumps(last, r); ok {
					where := "at the change to " + r.Track
					if p != before {
						where = fmt.Sprintf("between %s and %s", before.part.Name, p.part.Name)
					}
					f.Message += " " + where
					out = together(out, f)
				}
			}
			last, before = r, p
		})
		return out
	},
}

// jumps compares the tempo that a row begins at with that of the row before.
func jumps(before, r *placedRow) (Finding, bool) {
	a, b := before.music.grid, r.music.grid
	from, to := a.tempo(before.to-leastCounts, before.to), b.tempo(r.from, r.from+leastCounts)
	if math.Abs(to/from-1) <= feltJump {
		return Finding{}, false
	}
	f := r.about(Note)
	f.Line = r.music.ref.Pos.Line
	f.Figures = map[string]float64{"bpm_before": from, "bpm_after": to, "change_percent": 100 * (to/from - 1)}
	f.Message = fmt.Sprintf("from %s BPM to %s BPM (%s)", say.Num(from, 1), say.Num(to, 1), percent(to/from-1))
	f.Fix = "tracks nearer in tempo"
	both := math.Round(math.Sqrt(from * to))
	if math.Max(math.Abs(both/a.bpm-1), math.Abs(both/b.bpm-1)) <= smallStretch {
		f.Fix = fmt.Sprintf("bpm: %s for both; or %s", say.Num(both, 0), f.Fix)
	}
	return f, true
}

// together adds a jump to those before: one finding for all of the class, since
// it is the choice of music that makes them.
func together(out []Finding, f Finding) []Finding {
	if len(out) == 0 {
		f.Figures["jumps"] = 1
		return append(out, f)
	}
	all := &out[0]
	all.Figures["jumps"]++
	all.Also = append(all.Also, f.Row)
	head, _, _ := strings.Cut(all.Message, "; and ")
	all.Message = fmt.Sprintf("%s; and %s", head, say.Many(len(all.Also), "more jump"))
	return out
}
