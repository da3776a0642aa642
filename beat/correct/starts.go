package correct

import (
	"fmt"
	"slices"

	"onphrase/beat"
)

// one lets count 1 of a phrase fall on b. The phrases between the starts that
// were set before and after it keep their lengths and move along.
func (d *draft) one(b int) {
	lo, hi := d.room(b)
	shift, nearest := 0, -1
	for _, s := range d.starts {
		if s.beat > lo && s.beat < hi && (nearest < 0 || abs(b-s.beat) < abs(b-nearest)) {
			nearest = s.beat
		}
	}
	if nearest >= 0 {
		shift = wrapped(b - nearest)
	}
	d.sure()
	d.move(lo, hi, shift)
	switch {
	case shift > 0 && lo >= 0:
		d.cutAfter(lo)
	case shift < 0:
		d.cutLast(hi)
	}
	if d.set(b) {
		d.cutBefore(b)
		d.cutAfter(b)
	}
}

// wrapped is the shortest way by which phrases of 32 counts move as far as n.
func wrapped(n int) int {
	const l = beat.PhraseLen
	n = ((n % l) + l) % l
	if n > l/2 {
		n -= l
	}
	return n
}

// sure takes the counts and count 1 for certain. The trust in a phrase start
// is then what it is given that: it was the product of both.
func (d *draft) sure() {
	if d.trust.Count1 > 0 {
		for i := range d.starts {
			d.starts[i].trust = min(1, d.starts[i].trust/d.trust.Count1)
		}
		d.trust.Phrase = min(1, d.trust.Phrase/d.trust.Count1)
	}
	d.trust.Beat, d.trust.Count1 = 1, 1
}

// room is the stretch round b in which nothing was set before: the counts
// after lo and before hi.
func (d *draft) room(b int) (lo, hi int) {
	lo, hi = -1, len(d.beats)
	for _, s := range d.starts {
		if s.set && s.beat < b {
			lo = s.beat
		}
		if s.set && s.beat > b {
			return lo, s.beat
		}
	}
	return lo, hi
}

// move shifts the starts after lo and before hi. What leaves the stretch is
// gone.
func (d *draft) move(lo, hi, shift int) {
	stop := hi
	if hi == len(d.beats) {
		stop = d.end
	}
	var kept []start
	for _, s := range d.starts {
		if s.beat > lo && s.beat < hi && !s.set {
			s.beat += shift
			if s.beat <= lo || s.beat >= stop {
				continue
			}
		}
		kept = append(kept, s)
	}
	d.starts = kept
}

// set makes b a start that the person has set, and reports whether none was
// there.
func (d *draft) set(b int) bool {
	i, found := d.find(b)
	if !found {
		d.starts = slices.Insert(d.starts, i, start{beat: b})
	}
	d.starts[i].set, d.starts[i].trust = true, 1
	if b >= d.end {
		d.end = len(d.beats)
	}
	return !found
}

func (d *draft) find(b int) (int, bool) {
	return slices.BinarySearchFunc(d.starts, b, func(s start, b int) int { return s.beat - b })
}

// cutAfter cuts the phrase that starts at b, where it is longer than 32
// counts, into phrases from its start on; the rest is one of its own.
func (d *draft) cutAfter(b int) {
	i, found := d.find(b)
	if !found {
		return
	}
	for d.next(i)-d.starts[i].beat > beat.PhraseLen {
		d.starts = slices.Insert(d.starts, i+1, start{beat: d.starts[i].beat + beat.PhraseLen, trust: d.trust.Phrase})
		i++
	}
}

// cutLast does the same with the last phrase before a count.
func (d *draft) cutLast(hi int) {
	if i, _ := d.find(hi); i > 0 {
		d.cutAfter(d.starts[i-1].beat)
	}
}

// cutBefore does the same with the phrase that ends at b, from its end back.
func (d *draft) cutBefore(b int) {
	i, found := d.find(b)
	if !found || i == 0 {
		return
	}
	for at := b - beat.PhraseLen; at > d.starts[i-1].beat; at -= beat.PhraseLen {
		d.starts = slices.Insert(d.starts, i, start{beat: at, trust: d.trust.Phrase})
	}
}

// phrase lets a phrase start at b and leaves the others where they are. Counts
// that belonged to none, before the first and after the last, come in phrases.
func (d *draft) phrase(b int) {
	before := len(d.starts) == 0 || b < d.starts[0].beat
	after := b >= d.end
	if !d.set(b) {
		return
	}
	if after {
		d.cutLast(b)
	}
	if before || after {
		d.cutAfter(b)
	}
}

// startNear is the index of the phrase start that is at most a count away, -1
// where there is none.
func (d *draft) startNear(b int) int {
	for _, at := range []int{b, b - 1, b + 1} {
		if i, found := d.find(at); found {
			return i
		}
	}
	return -1
}

// noPhrase lets none start at b. Where a new analysis finds none there, all is
// well already.
func (d *draft) noPhrase(b int) error {
	i := d.startNear(b)
	switch {
	case i < 0:
		return nil
	case len(d.starts) == 1:
		return fmt.Errorf("the phrase at %s is the only one", Clock(d.beats[d.starts[i].beat]))
	}
	d.starts = slices.Delete(d.starts, i, i+1)
	return nil
}

// noStart says that no phrase starts at a time, and where the nearest does.
func (d *draft) noStart(at float64) error {
	best := -1
	for i, s := range d.starts {
		if best < 0 || absTime(d.beats[s.beat]-at) < absTime(d.beats[d.starts[best].beat]-at) {
			best = i
		}
	}
	if best < 0 {
		return fmt.Errorf("no phrase starts at %s; the track has none", Clock(at))
	}
	return fmt.Errorf("no phrase starts at %s; the nearest is phrase %d at %s", Clock(at), best+1,
		Clock(d.beats[d.starts[best].beat]))
}

// phraseOf is the index of the phrase that a count is in, -1 for none.
func (d *draft) phraseOf(b int) int {
	i, found := d.find(b)
	if !found {
		i--
	}
	if i < 0 || b >= d.end {
		return -1
	}
	return i
}

// counts lets a phrase of n counts start at b. The phrases after it, up to the
// next start that was set, keep their lengths and move along.
func (d *draft) counts(b, n int) error {
	_, hi := d.room(b)
	if b+n > hi {
		what := "the music has"
		if hi < len(d.beats) {
			what = "the next phrase start that was set leaves"
		}
		return fmt.Errorf("the phrase at %s cannot have %s: %s only %d", Clock(d.beats[b]), many(n), what, hi-b)
	}
	d.set(b)
	i, _ := d.find(b)
	was := d.next(i) - b
	if i+1 == len(d.starts) {
		d.end = max(d.end, b+n)
	} else {
		d.move(b, hi, n-was)
	}
	if b+n >= d.end {
		return nil
	}
	if d.set(b + n) {
		d.cutAfter(b + n)
	}
	if n < was {
		d.cutLast(hi)
	}
	return nil
}

func abs(n int) int { return max(n, -n) }

func absTime(s float64) float64 { return max(s, -s) }
