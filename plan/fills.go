package plan

import (
	"fmt"
	"strings"
)

// fills holds a block to its promise: whole phrases, or whole eights where
// it says so, at every stage.
func (m *mapping) fills(it *Item, b Block) {
	unit, name := unitOf(it), "phrase of 32"
	if unit == countsPerEight {
		name = "8-count"
	}
	once := b
	if len(b.Stages) > 0 { // stages differ in what fills them up, not in length
		once = Block{Sides: b.Sides, Times: b.Times, Moves: b.Stages[0].Moves}
	}
	spare := once.Counts() % unit
	if spare == 0 {
		return
	}
	short := unit - spare
	msg := fmt.Sprintf("block %s takes %s: %d short of a whole %s", it.Name, sum(once), short, name)
	m.r.problem(m.node, msg, fillHint(once, short, spare, unit))
}

// sum writes out how the counts of a block add up.
func sum(b Block) string {
	var s strings.Builder
	for i, step := range b.Moves {
		if i > 0 {
			s.WriteString(" + ")
		}
		fmt.Fprint(&s, step.Counts)
	}
	text := s.String()
	n := b.Sides.Times() * b.Times
	if n > 1 {
		if len(b.Moves) > 1 {
			text = "(" + text + ")"
		}
		text = fmt.Sprintf("%s x %d", text, n)
	}
	if len(b.Moves) == 1 && n == 1 {
		return fmt.Sprintf("%d counts", b.Counts())
	}
	return fmt.Sprintf("%s = %d counts", text, b.Counts())
}

// fillHint offers a hold in every pass when that is enough, and the other way
// out.
func fillHint(b Block, short, spare, unit int) string {
	n := b.Sides.Times() * b.Times
	last := b.Moves[len(b.Moves)-1]
	if short%n == 0 {
		return fmt.Sprintf("add a hold of %d counts, like {move: march, counts: %d}", short/n, short/n)
	}
	if spare%n == 0 && last.Counts > spare/n {
		return fmt.Sprintf("take %d counts from %s", spare/n, last.Move)
	}
	if unit == countsPerPhrase {
		return "fill each pass up to 16 or 32 counts, or say on: eight where it fills a bridge"
	}
	return "fill each pass up to 8 counts"
}
