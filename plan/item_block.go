package plan

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// Block is choreography that fills whole phrases.
type Block struct {
	Sides Sides // Both repeats it with the other lead
	Times int   // at least 1
	Moves []Step
}

// Step is one move of a block and the counts it gets.
type Step struct {
	Pos    Pos
	Move   string
	Counts int
}

func (Block) work() {}

// Pass is the number of counts of going through the moves once.
func (b Block) Pass() int {
	sum := 0
	for _, s := range b.Moves {
		sum += s.Counts
	}
	return sum
}

// Counts is the number of counts of the whole block: every pass, on each of
// its sides.
func (b Block) Counts() int { return b.Pass() * b.Sides.Times() * b.Times }

// maxTimes bounds how often a block is repeated.
const maxTimes = 64

const stepExample = "{move: march, counts: 8}"

func readBlock(m *mapping, it *Item, c *Catalog) Work {
	b := Block{Sides: word(m, "sides", Both, Right, Left), Times: 1}
	sure := true // every figure was understood
	if n := m.take("times"); n != nil {
		b.Times = read(m, "times", n, whole(1, maxTimes))
		sure = b.Times > 0
		b.Times = max(b.Times, 1)
	}
	for _, n := range m.needList("moves", "moves: [{move: march, counts: 32}]") {
		s, ok := m.r.step(n, c)
		sure = sure && ok && s.Counts > 0
		if ok {
			b.Moves = append(b.Moves, s)
		}
	}
	if it.On == OnClock {
		m.r.problem(m.value("on"), "a block is danced on counts, not by the clock", "on: phrase, eight or count")
	}
	if sure && len(b.Moves) > 0 {
		m.fills(it, b)
	}
	return b
}

func (r *reader) step(n *yaml.Node, c *Catalog) (Step, bool) {
	m, ok := r.mapping(n, "a move of a block", stepExample)
	if !ok {
		return Step{}, false
	}
	s := Step{
		Pos:    at(n),
		Move:   m.move("move", c, "counts: 4"),
		Counts: read(m, "counts", m.need("counts", stepExample), parseCounts),
	}
	m.done()
	return s, true
}

// fills holds a block to its promise: whole phrases, or whole eights where
// the instructor says `on: eight` to fill a bridge. On counts it may be any.
func (m *mapping) fills(it *Item, b Block) {
	unit, name := countsPerPhrase, "phrase of 32"
	switch it.On {
	case OnEight:
		unit, name = countsPerEight, "8-count"
	case OnCount, OnClock:
		return
	}
	spare := b.Counts() % unit
	if spare == 0 {
		return
	}
	short := unit - spare
	msg := fmt.Sprintf("block %s takes %s: %d short of a whole %s", it.Name, sum(b), short, name)
	m.r.problem(m.node, msg, fillHint(b, short, spare, unit))
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
	if n := b.Sides.Times() * b.Times; n > 1 {
		if len(b.Moves) > 1 {
			text = "(" + text + ")"
		}
		text = fmt.Sprintf("%s x %d", text, n)
	}
	if len(b.Moves) == 1 && b.Counts() == b.Pass() {
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
