package align

import (
	"fmt"

	"onphrase/plan/say"
)

var lowTrust = Check{
	Code:     "low-trust",
	Title:    "work rests on counts or phrases that are not sure",
	Why:      "If count 1 or the phrase start was found in the wrong place, everything on it is cued in the wrong place.",
	Source:   "the analysis's own estimate of being right; below 0.5 it is more likely wrong",
	Severity: Watch,
	Left:     "a change of the class makes count 1 no surer: listen and correct the track",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			out = append(out, p.doubtful()...)
		}
		return out
	},
}

// doubtful looks at each track of a part first, and at single items only
// where the track as a whole can be trusted.
func (p *placedPart) doubtful() []Finding {
	var out []Finding
	whole := map[*music]bool{}
	for i := 0; i < len(p.rows); {
		r, j := &p.rows[i], p.runEnd(i)
		i = j
		if r.music == nil || r.Kind == ChangeRow {
			continue
		}
		if _, seen := whole[r.music]; !seen {
			f, low := r.trackTrust()
			whole[r.music] = low
			if low {
				out = append(out, f)
			}
		}
		if whole[r.music] || !r.Kind.Work() || r.Kind == PauseRow {
			continue
		}
		if f, low := r.trustFrom(p.rows[j-1]); low {
			out = append(out, f)
		}
	}
	return out
}

// trackTrust judges the track as a whole.
func (r *placedRow) trackTrust() (Finding, bool) {
	t := r.music.grid.track.Trust
	least, what := t.Beat, "the counts"
	if t.Count1 < least {
		least, what = t.Count1, "count 1"
	}
	if t.Phrase < least {
		least, what = t.Phrase, "the phrase starts"
	}
	if least >= trusted {
		return Finding{}, false
	}
	f := r.about(Watch)
	f.Figures = map[string]float64{"trust_beat": t.Beat, "trust_count1": t.Count1, "trust_phrase": t.Phrase}
	f.Message = fmt.Sprintf("%s: %s may be wrong all through the track (trust %s)", r.music.ref.File, what, say.Num(least, 2))
	f.Fix = fmt.Sprintf("listen to it once and set them with: onphrase correct %q", r.music.ref.File)
	return f, true
}

// trustFrom judges the phrases and the stretches without a steady beat under
// an item from this row to its last one.
func (r *placedRow) trustFrom(last placedRow) (Finding, bool) {
	g := r.music.grid
	f := r.about(Watch)
	for _, u := range g.track.Unsteady {
		if u[0] < last.upto && u[1] > r.at {
			f.Figures = map[string]float64{"unsteady_from_seconds": u[0], "unsteady_to_seconds": u[1]}
			f.Message = fmt.Sprintf("%s lies on music without a steady beat, %s to %s of the track", r.name(), say.Clock(u[0]), say.Clock(u[1]))
			f.Fix = fmt.Sprintf("count it in by voice; or move it to the next phrase after %s", say.Clock(u[1]))
			return f, true
		}
	}
	least := 1.0
	var n int
	for i := r.from; i < min(last.to, g.end()); i++ {
		if p := g.at(i); p.trust < least {
			least, n = p.trust, p.phrase
		}
	}
	if least >= trusted {
		return Finding{}, false
	}
	f.Figures = map[string]float64{"trust": least, "phrase": float64(n)}
	f.Message = fmt.Sprintf("%s lies on phrase %d, whose start is not sure (trust %s)", r.name(), n, say.Num(least, 2))
	f.Fix = fmt.Sprintf("listen to %s and set phrase %d with: onphrase correct %q", say.Clock(g.time(r.from)), n, r.music.ref.File)
	return f, true
}
