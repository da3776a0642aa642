package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

var repTooShort = Check{
	Code:  "rep-too-short",
	Title: "one repetition gets less time than the move takes",
	Why: "Nobody gets down, out, back and up in two counts: the class loses the count, or leaves half of the " +
		"move out.",
	Source: "the least counts or seconds of one repetition in the catalogue of moves: common practice, no source, " +
		"unless the move names one",
	Severity: Fix,
	Left:     "how many are left when each gets its time is for you to choose",
	step: func(j *judge) []Finding {
		var out []Finding
		for i := j.from; i < j.to; i++ {
			r := &j.part.rows[i]
			if f, ok := j.hurriedRep(r); ok {
				out = append(out, f)
			} else if f, ok := j.hurriedStep(r); ok {
				out = append(out, f)
			}
		}
		return out
	},
}

// hurriedRep judges the repetitions of a row of a set.
func (l *placedClass) hurriedRep(r *placedRow) (Finding, bool) {
	if r.reps == nil || r.music == nil || r.reps.Rhythm.Pulse {
		return Finding{}, false
	}
	set, _ := r.item.Work.(plan.Set)
	m, _ := l.move(set.Move)
	if m.Least.Length == (plan.Length{}) {
		return Finding{}, false
	}
	counts, perCount := r.reps.Rhythm.Counts(), 60/r.tempo()
	f, short := r.shortOf(m.Least, counts, perCount)
	if !short {
		return f, false
	}
	need := m.Least.Counts
	if need == 0 {
		need = int(m.Least.Seconds/perCount + 1)
	}
	need = (need + 3) / 4 * 4
	f.Message = fmt.Sprintf("%s, %d x %s: %s", r.Item, r.reps.N, r.Rhythm,
		leastWords(m.Least, counts, perCount, "for each, one takes"))
	f.Fix = fmt.Sprintf("%s for each", say.Many(need, "count"))
	if n := r.Counts / need; n > 0 {
		f.Fix = fmt.Sprintf("%d of them, %s", n, f.Fix)
	}
	return f, true
}

// hurriedStep judges the first move of a block that is too short for one
// repetition.
func (l *placedClass) hurriedStep(r *placedRow) (Finding, bool) {
	if r.Kind != BlockRow || r.music == nil || r.Pass > 1 {
		return Finding{}, false
	}
	perCount := 60 / r.tempo()
	for _, s := range r.Moves {
		m, _ := l.move(s.Move)
		f, short := r.shortOf(m.Least, s.Counts, perCount)
		if !short {
			continue
		}
		f.Message = fmt.Sprintf("%s: %s", r.Item, leastWords(m.Least, s.Counts, perCount, "of "+s.Move+", one takes"))
		f.Fix = fmt.Sprintf("%s of it; or another move there", leastTime(m.Least))
		return f, true
	}
	return Finding{}, false
}

// shortOf holds some counts against the least of a move.
func (r *placedRow) shortOf(least plan.Least, counts int, perCount float64) (Finding, bool) {
	if ms(float64(counts)*perCount) >= ms(least.At(60/perCount)) {
		return Finding{}, false
	}
	f := r.about(Fix)
	f.Figures = map[string]float64{"counts": float64(counts), "seconds": float64(counts) * perCount}
	f.Source = fmt.Sprintf("%s (%s)", least.Source, least.Evidence)
	if least.Counts > 0 {
		f.Figures["least_counts"] = float64(least.Counts)
		return f, true
	}
	f.Severity = Watch // nothing goes wrong: it does less
	f.Figures["least_seconds"] = least.Seconds
	return f, true
}

// leastWords says how much there is and how much it takes: "2 counts for each,
// one takes 8 and more".
func leastWords(least plan.Least, counts int, perCount float64, between string) string {
	if least.Counts > 0 {
		return fmt.Sprintf("%s %s %d and more", say.Many(counts, "count"), between, least.Counts)
	}
	return fmt.Sprintf("%s s %s %s s and more", say.Num(float64(counts)*perCount, 1), between,
		say.Num(least.Seconds, 0))
}

func leastTime(least plan.Least) string {
	if least.Counts > 0 {
		return say.Many(least.Counts, "count")
	}
	return say.Num(least.Seconds, 0) + " s"
}
