package align

import (
	"fmt"
	"math"

	"onphrase/plan"
)

// noticed is the difference between planned and real seconds from which it
// is worth saying [s]: a studio clock shows whole seconds.
const noticed = 0.25

var intervalRounded = Check{
	Code:     "interval-rounded",
	Title:    "timed work was rounded to whole eights",
	Why:      "Work that ends with an eight is easy to count down, but it is not exactly the time written.",
	Source:   "arithmetic on the track's own counts",
	Severity: Note,
	find: func(l *layout) []Finding {
		type key struct {
			part         *partLayout
			name         string
			asked, given float64
		}
		var out []Finding
		seen := map[key]int{}
		l.each(func(p *partLayout, _ int, r *laid) {
			off := r.Seconds - r.asked
			if r.asked == 0 || r.music == nil || math.Abs(off) < noticed {
				return
			}
			k := key{p, r.Item, r.asked, math.Round(r.Seconds*10) / 10}
			if i, again := seen[k]; again {
				out[i].Figures["times"]++
				return
			}
			seen[k] = len(out)
			f := r.about(Note)
			f.Figures = map[string]float64{"asked_seconds": r.asked, "given_seconds": r.Seconds, "error_seconds": off, "counts": float64(r.Counts), "times": 1}
			f.Message = fmt.Sprintf("%s: %s s become %s, %s s (%+.2f s)", r.Item, num(r.asked, 1), many(r.Counts, "count"), num(r.Seconds, 2), off)
			f.Fix = "on: clock for exactly that time; the next item then waits for its count 1"
			out = append(out, f)
		})
		return out
	},
}

var intervalEnds = Check{
	Code:     "interval-mid-phrase",
	Title:    "timed work ends in the middle of a phrase",
	Why:      "The music goes on where the work stops, so the end must be counted down: nobody hears it coming.",
	Source:   "a 32-count phrase is common practice; the counts are the track's own",
	Severity: Note,
	find: func(l *layout) []Finding {
		var out []Finding
		l.each(func(p *partLayout, i int, r *laid) {
			if r.Kind != IntervalRow || r.music == nil || r.past {
				return
			}
			end := r.music.grid.at(r.to)
			next := p.after(i)
			goesOn := next != nil && next.music == r.music && next.Kind != HoldRow && p.itemEnd(i+1) <= r.to+end.left
			if end.count == 1 || goesOn {
				return
			}
			g := r.music.grid
			f := r.about(Note)
			up, down := g.time(r.to+end.left)-r.at, g.time(r.to-end.count+1)-r.at
			f.Figures = map[string]float64{"counts_to_phrase_end": float64(end.left), "seconds_to_phrase_end": up / g.speed, "seconds_to_phrase_start": max(0, down/g.speed)}
			f.Message = fmt.Sprintf("%s ends on count %d of phrase %d, %s before its end", r.Item, end.count-1, end.phrase, many(end.left, "count"))
			f.Fix = endsWithPhrase(r, up/g.speed, down/g.speed)
			out = append(out, f)
		})
		return out
	},
}

// endsWithPhrase names the times that end with a phrase.
func endsWithPhrase(r *laid, up, down float64) string {
	ways := []string{fmt.Sprintf("%s s ends with the phrase", num(up, 1))}
	if down > 0 {
		ways = append(ways, fmt.Sprintf("%s s with the one before", num(down, 1)))
	}
	if _, ok := r.item.Work.(plan.Interval); ok {
		ways = append(ways, "on: phrase")
	}
	return or(ways)
}
