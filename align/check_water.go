package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

// drinkEvery is how long a class may go without water [s]: 200 to 300 ml
// every 10 to 20 minutes are advised.
//
// Ref: instructors' pages; ACSM 2007 asks to keep the loss under 2 % of body
// mass and gives no interval.
const drinkEvery = 20 * 60

var waterGap = Check{
	Code:     "water-gap",
	Title:    "a long time without water",
	Why:      "People drink when there is a moment for it, and leave the room when there is none.",
	Source:   "instructors' pages: 200-300 ml every 10-20 minutes; ACSM position stand 2007 gives no interval",
	Severity: Watch,
	Left:     "where people can drink only you know: write a pause",
	find: func(l *placedClass) []Finding {
		g := l.dryGap()
		if ms(g.seconds) <= drinkEvery || l.untimed() {
			return nil
		}
		f := g.until.about(Watch)
		f.Figures = map[string]float64{"gap_seconds": g.seconds, "advised_seconds": drinkEvery}
		f.Message = fmt.Sprintf("no water from %s to %s, %s", say.Clock(g.from), say.Clock(g.from+g.seconds),
			say.Clock(g.seconds))
		f.Fix = fmt.Sprintf("{pause: water, time: 30s} near %s", say.Clock(g.from+g.seconds/2))
		return []Finding{f}
	},
}

// dry is a time without water.
type dry struct {
	from, seconds float64    // class time, length [s]
	until         *placedRow // the row it ends before, or the last of the class
}

// dryGap is the longest time without water; a cool-down or a stretch at the
// end of the class is over before it matters.
func (l *placedClass) dryGap() dry {
	var worst dry
	from := 0.0
	l.each(func(p *placedPart, _ int, r *placedRow) {
		water := false
		if r.item != nil {
			w, ok := r.item.Work.(plan.Pause)
			water = ok && w.Kind == plan.Water
		}
		if calm(p.part.Kind) && !water {
			return
		}
		at := r.ClassTime
		if !water {
			at += r.Seconds
		}
		if gap := at - from; gap > worst.seconds {
			worst = dry{from, gap, r}
		}
		if water {
			from = r.ClassTime + r.Seconds
		}
	})
	return worst
}

// calm reports whether a part brings people down.
func calm(k plan.PartKind) bool { return k == plan.CoolDown || k == plan.Stretch }

var waterShort = Check{
	Code:     "water-too-short",
	Title:    "a water break too short to drink in",
	Why:      "Until the bottle is found and open, the next song has begun.",
	Source:   "20 s, usual are 30 to 60: common practice, no source; needs: in a moves file sets your own",
	Severity: Note,
	Left:     "a note: how long they need only you know; write a longer time",
	find: func(l *placedClass) []Finding {
		need := l.catalog().Needs[plan.Water]
		var out []Finding
		l.each(func(p *placedPart, i int, r *placedRow) {
			if r.item == nil || r.music == nil {
				return
			}
			w, ok := r.item.Work.(plan.Pause)
			if !ok || w.Kind != plan.Water || l.enough(r, need.Time) {
				return
			}
			if n := len(out); n > 0 {
				out[0].Figures["times"]++
				return
			}
			f := r.about(Note)
			f.Source = need.Source
			f.Figures = map[string]float64{"seconds": r.Seconds, "times": 1}
			f.Message = fmt.Sprintf("%s: %s s, usual are %s and more", r.Item, say.Num(r.Seconds, 0), need.Time)
			f.Fix = fmt.Sprintf("time: %s", need.Time)
			out = append(out, f)
		})
		return out
	},
}

// enough reports whether a row lasts at least so long.
func (l *placedClass) enough(r *placedRow, need plan.Length) bool {
	return r.Counts >= need.Counts && ms(r.Seconds) >= need.Seconds
}
