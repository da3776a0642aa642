package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

// usualTime is how long the two ends of a class usually are, and their share
// of it.
//
// Ref: warm-up 3-5 minutes (a university's guidelines), 7-15 (EuropeActive
// Essentials), 10-20 (dynamic, ACE); stretch and cool-down 7-10
// (EuropeActive). Shares of classes of 30 to 60 minutes: common practice.
var usualTime = []struct {
	name        string
	kinds       []plan.PartKind
	least, most float64 // [s]
	share       float64
}{
	{"warm-up", []plan.PartKind{plan.WarmUp}, 3 * 60, 15 * 60, 0.17},
	{"cool-down", []plan.PartKind{plan.CoolDown, plan.Stretch}, 3 * 60, 15 * 60, 0.12},
}

// farShort is the share of the least time below which an end of the class
// is hardly there.
const farShort = 0.75

var partShare = Check{
	Code:  "part-share",
	Title: "warm-up or cool-down is much shorter or longer than usual",
	Why:   "A warm-up of two minutes warms nobody; one of twenty leaves no class behind it.",
	Source: "published warm-ups run from 3-5 (a university's guidelines) over 7-15 (EuropeActive Essentials) to " +
		"10-20 minutes (ACE); \"no strict standard\"",
	Severity: Watch,
	Left:     "how long a part is to be is for you to decide: more rounds or fewer, or another track",
	details: func(*plan.Catalog) []string {
		var out []string
		for _, u := range usualTime {
			out = append(out, fmt.Sprintf("%s: %s to %s minutes, about %s %% of a class of 30 to 60 minutes (common "+
				"practice)", u.name, say.Num(u.least/60, 0), say.Num(u.most/60, 0), say.Num(100*u.share, 0)))
		}
		return append(out, "common shares of 30, 45 and 60 minutes (common practice, no source): warm-up 17, 18 and "+
			"17 %; rounds 50, 53 and 57 %; core 13, 13 and 12 %; cool-down 13, 11 and 12 %; set-up 7, 4 and 3 %")
	},
	find: func(l *placedClass) []Finding {
		if l.length() < wholeClass || l.untimed() {
			return nil
		}
		var out []Finding
		for _, u := range usualTime {
			seconds, first := 0.0, (*placedPart)(nil)
			for _, p := range l.parts {
				for _, k := range u.kinds {
					if p.part.Kind == k {
						seconds += p.ends - p.begins
						if first == nil {
							first = p
						}
					}
				}
			}
			if first == nil || seconds >= u.least && seconds <= u.most {
				continue
			}
			f := first.about(Note, first.part.Pos.Line)
			if seconds < farShort*u.least {
				f.Severity = Watch
			}
			f.Figures = map[string]float64{"seconds": seconds, "least_seconds": u.least, "most_seconds": u.most,
				"share_percent": 100 * seconds / l.length()}
			f.Message = fmt.Sprintf("the %s lasts %s, usual are %s to %s", u.name, say.Clock(seconds),
				say.Clock(u.least), say.Clock(u.most))
			f.Fix = fmt.Sprintf("about %s (%s %% of the class)", say.Clock(u.share*l.length()), say.Num(100*u.share, 0))
			out = append(out, f)
		}
		return out
	},
}
