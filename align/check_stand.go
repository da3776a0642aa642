package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

// longStand is how long a class may stand and wait [s]: a phrase is about 15 s
// and can be filled by marching on the spot. Common practice, no source.
const longStand = 20

// grown is how many counts more than asked for a setup may take until the item
// can begin [counts]: an eight is lost to where eights begin. Common practice,
// no source.
const grown = 2 * eight

var classWaits = Check{
	Code:     "class-waits",
	Title:    "the class stands and waits",
	Why:      "People who stand cool down, look at their phones and lose the thread; somebody starts on her own.",
	Source:   "20 s, or more than two eights over the setup asked for: common practice, no source",
	Severity: Watch,
	Left:     "what to do in that time only you know",
	find: func(l *placedClass) []Finding {
		var out []Finding
		l.each(func(p *placedPart, i int, r *placedRow) {
			if f, ok := p.waits(i); ok {
				out = append(out, f)
			}
		})
		return out
	},
}

// waits judges row i: a lead-in, a setup or a hold.
func (p *placedPart) waits(i int) (Finding, bool) {
	r := &p.rows[i]
	long := ms(r.Seconds) >= longStand
	asked := 0
	if next := p.nextItem(i); r.setup && next != nil {
		asked = r.music.grid.countsOf(next.Setup, r)
	}
	f := r.about(Watch)
	f.Of = p.nextItem(i)
	f.Figures = map[string]float64{"seconds": r.Seconds, "counts": float64(r.Counts)}
	switch {
	case r.Kind == LeadIn && long:
		f.Line = r.music.ref.Pos.Line
		f.Message = fmt.Sprintf("%s plays for %s before the first item: the class stands", r.Track,
			say.Clock(r.Seconds))
		f.Fix = "an earlier start:; or something easy on it, such as a march"
	case r.setup && r.Counts > asked+grown:
		if !long {
			f.Severity = Note
		}
		f.Figures["counts_asked"] = float64(asked)
		f.Message = fmt.Sprintf("%s: %s instead of %d, until the item can start", r.Item, say.Many(r.Counts, "count"),
			asked)
		f.Fix = fmt.Sprintf("fewer counts before it; or setup: %d counts, and say what to do in them", r.Counts)
	case r.Kind == HoldRow && !r.setup && long:
		f.Message = fmt.Sprintf("the class holds for %s (%s)", say.Clock(r.Seconds), say.Many(r.Counts, "count"))
		f.Fix = "more of what comes before it; or a march or pulses until then"
		if before := p.before(i); before != nil && before.item != nil {
			f.Line = before.item.Pos.Line
		}
	default:
		return Finding{}, false
	}
	return f, true
}

// countsOf is the counts that a length takes where a row lies.
func (g *grid) countsOf(l plan.Length, r *placedRow) int {
	if l.Counts > 0 || r.Seconds == 0 {
		return l.Counts
	}
	return int(l.Seconds*float64(r.Counts)/r.Seconds + 0.5)
}
