package align

import (
	"fmt"
	"math"
)

// feltJump is the difference of tempo from which people feel a change.
//
// Ref: Drake & Botte 1993: steps of 1.5-3 % in steady sequences.
const feltJump = 0.03

var tempoJump = Check{
	Code:     "tempo-jump",
	Title:    "the tempo jumps when the track changes within a part",
	Why:      "The same moves suddenly come faster or slower, with no new start to set it apart.",
	Source:   "Drake & Botte 1993: listeners notice steps of about 1.5-3 %",
	Severity: Note,
	find: func(l *layout) []Finding {
		var out []Finding
		l.each(func(p *partLayout, i int, r *laid) {
			if r.Kind != ChangeRow || i == 0 {
				return
			}
			a, b := p.rows[i-1].music.grid, r.music.grid
			from, to := a.bpm*a.speed, b.bpm*b.speed
			if math.Abs(to/from-1) <= feltJump {
				return
			}
			f := r.about(Note)
			f.Line = r.music.ref.Pos.Line
			f.Figures = map[string]float64{"bpm_before": from, "bpm_after": to, "change_percent": 100 * (to/from - 1)}
			f.Message = fmt.Sprintf("from %s BPM to %s BPM (%s) at the change to %s", num(from, 1), num(to, 1), percent(to/from-1), r.Track)
			f.Fix = fmt.Sprintf("bpm: %s for the part, if both songs bear it; or tracks nearer in tempo", num(math.Round(math.Sqrt(from*to)), 0))
			out = append(out, f)
		})
		return out
	},
}
