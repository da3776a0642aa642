package align

import (
	"fmt"

	"onphrase/beat"
)

// When timed work is called out. Common practice, no source for the figures;
// that the last word of a countdown is the next move and never "one", which
// makes it late, is a trade article's advice on coaching faults.
const (
	halfFrom  = 30 // seconds of work from which half time is worth a call
	lastCall  = 10 // seconds left at the last call
	countdown = 4  // counts, spoken 4, 3, 2, and then the cue
)

// marks gives timed work its countdown.
func (l *placedClass) marks() {
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		if r.music == nil || r.Kind != IntervalRow && r.Kind != PauseRow {
			return
		}
		if r.Kind == IntervalRow && r.Seconds >= halfFrom {
			r.mark(r.Seconds/2, "half")
		}
		if r.Seconds >= 2*lastCall {
			r.mark(r.Seconds-lastCall, fmt.Sprintf("%d s", lastCall))
		}
		g := r.music.grid
		if r.to-r.from < beat.PhraseLen/4 {
			return
		}
		for n := countdown; n > 1; n-- {
			r.mark(r.Seconds-(g.time(r.to)-g.time(r.to-n))/g.speed, fmt.Sprint(n))
		}
	})
}

// mark adds a call some seconds into the row.
func (r *placedRow) mark(seconds float64, say string) {
	r.Marks = append(r.Marks, Mark{ms(r.ClassTime + seconds), say})
}
