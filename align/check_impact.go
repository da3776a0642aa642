package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

// manyLandings is the number of hard landings that beginners are advised to
// stay below in one session of jumps.
//
// Ref: 80-100 contacts, a coaching site citing the practice of the NSCA; it
// speaks of plyometric training, not of jogging on the spot.
const manyLandings = 100

var landingsMany = Check{
	Code:  "landings",
	Title: "many hard landings, and no easier version offered for some of them",
	Why: "Jumping is what new, heavy or sore people cannot do for long; without another version on offer they " +
		"stop or push through.",
	Source: "80-100 contacts a session for beginners in plyometrics, an instructors' page citing NSCA practice; " +
		"counts by the catalogue of moves",
	Severity: Note,
	Left:     "the easier version is for you to name",
	find: func(l *placedClass) []Finding {
		all, total, seconds := l.landings(), 0, 0.0
		var bare []effort
		for _, w := range all {
			total, seconds = total+w.landings, seconds+w.seconds
			if w.row.Easier == "" {
				bare = append(bare, w)
			}
		}
		if total <= manyLandings || len(bare) == 0 {
			return nil
		}
		f := bare[0].row.about(Note)
		f.Figures = map[string]float64{"landings": float64(total), "high_impact_seconds": seconds,
			"items_without_easier": float64(len(bare))}
		f.Message = fmt.Sprintf("about %d hard landings in the class (%s of high impact); %s has no easier version",
			total, say.Clock(seconds), bare[0].name)
		if n := len(bare) - 1; n > 0 {
			f.Message += fmt.Sprintf(", nor %s more", say.Many(n, "row"))
		}
		f.Fix = "easier: a version without a jump"
		return []Finding{f}
	},
}

// effort is a stretch of one move.
type effort struct {
	row      *placedRow
	name     string
	seconds  float64
	landings int
}

// landings lists the work of high impact.
func (l *placedClass) landings() []effort {
	var all []effort
	l.eachMove(func(r *placedRow, name string, counts int, seconds float64) {
		m, ok := l.move(name)
		if !ok || m.Impact != plan.HighImpact {
			return
		}
		reps := r.Reps
		if r.reps == nil {
			reps = counts / max(1, m.Counts)
		}
		all = append(all, effort{r, m.Name, seconds, reps * landingsOf(m)})
	})
	return all
}

// landingsOf is how often one repetition lands: a move of one or two counts on
// every count (a jack goes out and in, a jog steps right and left), unless it
// goes over to the other foot in two counts, as a skater does; that one, and a
// longer one, once.
func landingsOf(m plan.Move) int {
	if m.Counts > 2 || m.Switches {
		return 1
	}
	return max(1, m.Counts)
}

// eachMove calls do for every stretch of one move: of a set or an interval
// the whole row, of a block its steps.
func (l *placedClass) eachMove(do func(r *placedRow, move string, counts int, seconds float64)) {
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		if r.item == nil {
			return
		}
		switch w := r.item.Work.(type) {
		case plan.Set:
			do(r, w.Move, r.Counts, r.Seconds)
		case plan.Interval:
			do(r, w.Move, r.Counts, r.Seconds)
		case plan.Block:
			for _, s := range r.Moves {
				do(r, s.Move, s.Counts, r.Seconds*float64(s.Counts)/float64(max(1, r.Counts)))
			}
		}
	})
}
