package plan

import "gopkg.in/yaml.v3"

// Block is choreography that fills whole phrases.
type Block struct {
	Sides  Sides // Both repeats it with the other lead
	Times  int   // at least 1
	Moves  []Step
	Build  Build   // how it is built up in front of the class
	Stages []Stage // it is built up in; none when it is danced as written
}

// Step is one move of a block and the counts it gets.
type Step struct {
	Pos    Pos
	Move   string
	Counts int
	With   []string // what the layers have added: "arms overhead"
}

func (Block) work() {}

// Stage is one state of a block that is built up.
type Stage struct{ Moves []Step }

// Pass is the block danced through once, with one lead.
type Pass struct {
	Stage, Stages int // of a block that is built up, from 1; else 1 of 1
	Side          Sides
	Moves         []Step
}

// Passes lists every pass of the block in the order danced: each stage as
// many times as the block says, every time with each lead.
func (b Block) Passes() []Pass {
	stages := b.Stages
	if len(stages) == 0 {
		stages = []Stage{{b.Moves}}
	}
	var all []Pass
	for n, s := range stages {
		for range max(1, b.Times) {
			for _, side := range b.Sides.Each() {
				all = append(all, Pass{n + 1, len(stages), side, s.Moves})
			}
		}
	}
	return all
}

// countsOf is how many counts the moves take.
func countsOf(moves []Step) int {
	sum := 0
	for _, s := range moves {
		sum += s.Counts
	}
	return sum
}

// Counts is the number of counts of the pass.
func (p Pass) Counts() int { return countsOf(p.Moves) }

// Counts is the number of counts of the whole block: every pass, on each of
// its sides.
func (b Block) Counts() int {
	sum := 0
	for _, p := range b.Passes() {
		sum += p.Counts()
	}
	return sum
}

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
	p := m.method(c)
	b.Build = p.method
	if sure && p.sure && len(b.Moves) > 0 && m.builds(&b, p, unitOf(it), c) {
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

// unitOf is what the passes of a block together fill [counts]: phrases, or
// eights where the instructor says `on: eight` to fill a bridge; 1 on counts.
func unitOf(it *Item) int {
	switch it.On {
	case OnEight:
		return countsPerEight
	case OnCount, OnClock:
		return 1
	}
	return countsPerPhrase
}
