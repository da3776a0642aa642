package align

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"onphrase/plan/say"
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
	Left:     "a note: whole eights are easier to count down than exact seconds",
	find: func(l *placedClass) []Finding {
		if f, ok := l.rounded(); ok {
			return []Finding{f}
		}
		return nil
	},
}

// mostNamed bounds how many lengths one finding names.
const mostNamed = 4

// rounded gathers all timed work of the class in one finding.
func (l *placedClass) rounded() (Finding, bool) {
	var f Finding
	var each []string
	worst, sum, n := 0.0, 0.0, 0
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		off := r.Seconds - r.asked
		if r.asked == 0 || r.music == nil || math.Abs(off) < noticed {
			return
		}
		if n == 0 {
			f = r.about(Note)
		}
		n, sum = n+1, sum+off
		if math.Abs(off) > math.Abs(worst) {
			worst = off
		}
		as := fmt.Sprintf("%s s as %s s (%s)", say.Num(r.asked, 1), say.Num(r.Seconds, 1), say.Many(r.Counts, "count"))
		if !slices.Contains(each, as) {
			each = append(each, as)
		}
	})
	f.Figures = map[string]float64{"error_seconds": sum, "largest_error_seconds": worst, "times": float64(n)}
	if more := len(each) - mostNamed; more > 0 {
		each = append(each[:mostNamed], fmt.Sprintf("%s more", say.Many(more, "length")))
	}
	f.Message = fmt.Sprintf("timed work on whole eights: %s; together %+.1f s in %s", strings.Join(each, ", "), sum,
		say.Many(n, "row"))
	f.Fix = "on: clock for exactly the time written; the next item then waits for its count 1"
	return f, n > 0
}

var intervalEnds = Check{
	Code:     "interval-mid-phrase",
	Title:    "timed work ends in the middle of a phrase",
	Why:      "The music goes on where the work stops, so the end must be counted down: nobody hears it coming.",
	Source:   "a 32-count phrase is common practice; the counts are the track's own",
	Severity: Note,
	Left:     "a note: the end can be counted down",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			first := len(out)
			for i := range p.rows {
				f, ok := p.midPhrase(i)
				switch {
				case ok && len(out) == first:
					out = append(out, f)
				case ok: // one that ends there takes those after it along
					out[first].Also = append(out[first].Also, f.Row)
				}
			}
			if len(out) > first && len(out[first].Also) > 0 {
				out[first].Message += fmt.Sprintf("; and %s after it", say.Many(len(out[first].Also), "row"))
			}
		}
		return out
	},
}

// midPhrase judges the end of row i. Work by the clock ends where it ends.
func (p *placedPart) midPhrase(i int) (Finding, bool) {
	r := &p.rows[i]
	if r.Kind != IntervalRow || r.music == nil || r.past || r.ByClock {
		return Finding{}, false
	}
	end := r.music.grid.at(r.to)
	next := p.after(i)
	if end.count == 1 || next == nil || next.music != r.music || p.goesOn(i, end) {
		return Finding{}, false
	}
	f := r.about(Note)
	up, down := r.seconds(r.to+end.left), r.seconds(r.to-end.count+1)
	f.Figures = map[string]float64{"counts_to_phrase_end": float64(end.left), "seconds_to_phrase_end": up,
		"seconds_to_phrase_start": max(0, down)}
	f.Message = fmt.Sprintf("%s ends on count %d of phrase %d, %s before its end", r.Item, end.count-1, end.phrase,
		say.Many(end.left, "count"))
	f.Fix = endsWithPhrase(r, end)
	return f, true
}

// goesOn reports whether the item after row i ends within the phrase that
// row i ends in, so that the two share it.
func (p *placedPart) goesOn(i int, end position) bool {
	return p.rows[i+1].Kind != HoldRow && p.stops(i+1) <= p.rows[i].to+end.left
}

// seconds is how long the row lasts when it ends before count i, as played.
func (r *placedRow) seconds(i int) float64 { return (r.music.grid.time(i) - r.at) / r.music.grid.speed }

// endsWithPhrase names the lengths that end with a phrase: the next end, and
// the one before it when at least half of the work is left.
func endsWithPhrase(r *placedRow, end position) string {
	up, down := r.to+end.left, r.to-end.count+1
	length := func(i int) string {
		if r.asked > 0 {
			return say.Num(r.seconds(i), 1) + " s"
		}
		return say.Many(i-r.from, "count")
	}
	ways := []string{length(up) + " ends with the phrase"}
	if 2*(down-r.from) >= r.to-r.from {
		ways = append(ways, length(down)+" with the one before")
	}
	if r.asked > 0 {
		ways = append(ways, "on: phrase")
	}
	return say.Ways(ways)
}
