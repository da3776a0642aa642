package align

import (
	"math"

	"onphrase/beat"
	"onphrase/plan"
)

// tie is how much nearer one of two ends must be to count as nearer [s]: two
// counts, each of them off by beatError.
const tie = 2 * beatError

// snapOf is what an item is laid on: what it says itself, or what its kind
// of work is usually laid on.
func snapOf(it *plan.Item) plan.Snap {
	if it.On != plan.OnDefault {
		return it.On
	}
	if _, ok := it.Work.(plan.Block); ok {
		return plan.OnPhrase
	}
	return plan.OnEight
}

// next is the first count at or after a time on which an item of that many
// counts may start.
func (g *grid) next(t float64, on plan.Snap, need int) int {
	i := g.index(t)
	for !g.starts(i, on, need) {
		i++
	}
	return i
}

// starts reports whether an item of need counts may start on count i. An
// item that is longer than a tag waits until the tag is over: begun inside
// it, all its eights would be torn. What is laid on phrases waits until any
// phrase is over that is too short for it.
func (g *grid) starts(i int, on plan.Snap, need int) bool {
	p := g.at(i)
	length := p.count - 1 + p.left
	tag := p.phrase > 0 && length < 2*eight
	switch on {
	case plan.OnPhrase:
		return p.phrase > 0 && p.count == 1 && !(length < beat.PhraseLen && need > p.left)
	case plan.OnEight:
		if p.phrase == 0 {
			return p.left%eight == 0
		}
		torn := p.left < eight || tag
		return (p.count-1)%eight == 0 && !(torn && need > p.left)
	}
	return true
}

// ends reports whether timed work may end just before count i.
func (g *grid) ends(i int, on plan.Snap) bool {
	p := g.at(i)
	switch on {
	case plan.OnPhrase:
		return p.count == 1
	case plan.OnEight:
		if p.phrase == 0 {
			return p.left%eight == 0
		}
		return (p.count-1)%eight == 0
	}
	return true
}

// until is the count before which work of that many seconds, begun on count
// from, ends best: nearest to the time asked, and on a tie where a phrase
// ends. Seconds are as played.
func (g *grid) until(from int, seconds float64, on plan.Snap) int {
	want := g.time(from) + seconds*g.speed
	best, off := from, math.Inf(1)
	for i := from + 1; ; i++ {
		if !g.ends(i, on) {
			continue
		}
		d := math.Abs(g.time(i)-want) / g.speed
		tied := d < off+tie && g.at(i).count == 1 && g.at(best).count != 1
		if d < off-tie || tied {
			best, off = i, d
		}
		if g.time(i) > want && d > off+tie {
			return best
		}
	}
}
