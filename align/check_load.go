package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

// How long one pattern is worked with weights without a rest [s], and without
// any, and how many repetitions in one go, before it is worth a word. A song of
// squats in a class with weights lasts four to six minutes with breaks of an
// eight or two in it.
//
// Common practice, no source.
const (
	longLoad   = 3 * 60.0 // with weights
	longOwn    = 5 * 60.0 // with the weight of the body
	manyInOne  = 100
	realRest   = 8.0 // a break that muscles notice [s]
	longPosing = 90.0
)

var longUnderLoad = Check{
	Code:  "long-without-rest",
	Title: "one pattern is worked for long without a rest",
	Why:   "Tired legs and backs lose their form, and people put the weight down on their own count.",
	Source: "3 minutes with weights, 5 without, or 100 repetitions of one pattern in one go: common practice, no " +
		"source",
	Severity: Watch,
	Left:     "where the class rests is for you to choose",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, s := range l.stretches() {
			if f, ok := s.finding(); ok {
				out = append(out, f)
			}
		}
		return out
	},
}

// workout is sets of one pattern that follow each other without a rest.
type workout struct {
	rows    []*placedRow
	pattern string
	seconds float64 // under load
	reps    int
	loaded  bool
	ended   float64 // class time [s]
}

// stretches takes the class apart where the pattern changes, where there is a
// rest, and where the other side takes over: then the first one rests.
func (l *placedClass) stretches() []workout {
	var all []workout
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		if r.Kind != SetRow || r.Pattern == "" || r.music == nil {
			return
		}
		if n := len(all); n == 0 || !all[n-1].goesOn(r) {
			all = append(all, workout{pattern: r.Pattern})
		}
		w := &all[len(all)-1]
		w.rows, w.reps, w.seconds = append(w.rows, r), w.reps+r.Reps, w.seconds+r.Load
		w.loaded = w.loaded || r.LoadClass != bodyWeight
		w.ended = r.ClassTime + r.Seconds
	})
	return all
}

func (w *workout) goesOn(r *placedRow) bool {
	last := w.rows[len(w.rows)-1]
	return w.pattern == r.Pattern && last.Side == r.Side && r.ClassTime-w.ended < realRest
}

func (w *workout) finding() (Finding, bool) {
	most, with := longOwn, "without weights"
	if w.loaded {
		most, with = longLoad, "with weights"
	}
	if w.seconds < most && w.reps <= manyInOne {
		return Finding{}, false
	}
	f := w.rows[0].about(Watch)
	for _, r := range w.rows[1:] {
		f.Also = append(f.Also, r.Row.Row)
	}
	f.Figures = map[string]float64{
		"load_seconds": w.seconds, "reps": float64(w.reps), "usual_seconds": most, "usual_reps": manyInOne,
	}
	f.Message = fmt.Sprintf("%s: %s of %s and %s in one go (up to %s %s or %d is usual)",
		w.rows[0].Item, say.Clock(w.seconds), w.pattern, say.Many(w.reps, "rep"), say.Clock(most), with, manyInOne)
	f.Fix = "a break of two eights in the middle; or work of another pattern between"
	return f, true
}

var longHold = Check{
	Code:     "held-long",
	Title:    "a position is held for very long",
	Why:      "Most of a class comes down before it is over, and those who stay hang in their lower backs.",
	Source:   "90 s of a plank or another hold of the trunk: common practice, no source",
	Severity: Watch,
	Left:     "how long it is held is for you to choose",
	find: func(l *placedClass) []Finding {
		var out []Finding
		l.each(func(_ *placedPart, _ int, r *placedRow) {
			name, held := l.posed(r)
			if !held || r.Seconds <= longPosing {
				return
			}
			f := r.about(Watch)
			f.Figures = map[string]float64{"seconds": r.Seconds, "usual_seconds": longPosing}
			f.Message = fmt.Sprintf("%s for %s without a break (up to %s is usual)", name, say.Clock(r.Seconds),
				say.Clock(longPosing))
			f.Fix = "two or three shorter ones with a rest between"
			out = append(out, f)
		})
		return out
	},
}

// posed is the move of a row that is a hold of the trunk: core work that is
// counted by the eight and has no way to go.
func (l *placedClass) posed(r *placedRow) (string, bool) {
	if r.item == nil || r.music == nil {
		return "", false
	}
	name, _ := moveName(r.item)
	m, ok := l.move(name)
	return m.Name, ok && m.Pattern == "core" && m.Class == "" && m.Counts == eight && m.Impact == plan.NoImpact
}
