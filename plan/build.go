package plan

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// Build is how a block is built up in front of the class.
type Build string

const (
	NoBuild  Build = ""
	AddOn    Build = "add-on"   // A; A and B; A, B and C, each repeated to fill its phrases
	Layering Build = "layering" // the whole block, then one change at a time, counts unchanged
	Halving  Build = "halving"  // 8-8, 4-4, 2-2, 1-1: every move half as often, all of it twice as often
	Holding  Build = "holding"  // A and a base move; A, B and a base move, filling the phrases of the whole
)

// maxBuilt bounds the moves of a block that is built up: four phrases of one
// rep each are hard to learn already.
const maxBuilt = 32

// baseMove is what a class falls back to where a block leaves counts free.
// Common practice, no source.
const baseMove = "march"

// method is how a block is built, as written.
type method struct {
	method Build
	hold   Step // the base move; without a name when none fills up
	layers []layer
	sure   bool // all of it was understood
}

// layer is one change to one move of a block.
type layer struct {
	node    *yaml.Node
	move    string
	becomes string // another move of the catalogue
	add     string // or words for what is added
}

// method reads the keys that say how a block is built up.
func (m *mapping) method(c *Catalog) method {
	p := method{method: word(m, "build", AddOn, Layering, Halving, Holding), sure: true}
	if p.method == "" && m.has("build") {
		p.sure = false
	}
	if p.method == AddOn || p.method == Holding {
		p.hold = Step{Pos: at(m.value("build")), Move: baseMove}
	}
	if n := m.take("hold"); n != nil {
		name := m.text("hold")
		m.knownMove("hold", name, c, "counts: 2")
		p.hold = Step{Pos: at(n), Move: name}
		p.sure = p.sure && name != ""
	}
	switch {
	case p.method == Layering:
		for _, n := range m.needList("layers", layersExample) {
			l, ok := m.r.layer(n, c)
			p.layers, p.sure = append(p.layers, l), p.sure && ok
		}
		p.sure = p.sure && len(p.layers) > 0
	case m.has("layers"):
		m.r.problem(m.take("layers"), "layers need build: layering", "add it, or remove the layers")
	default:
		m.ask("layers")
	}
	return p
}

const layersExample = "layers: [{move: step touch, becomes: double step touch}, {move: march, add: arms overhead}]"

func (r *reader) layer(n *yaml.Node, c *Catalog) (layer, bool) {
	m, ok := r.mapping(n, "a layer", "{move: march, add: arms overhead}")
	if !ok {
		return layer{}, false
	}
	l := layer{node: n, move: m.needText("move", "move: march"), becomes: m.text("becomes"), add: m.text("add")}
	if l.becomes != "" {
		m.knownMove("becomes", l.becomes, c, "counts: 4")
	}
	if (l.becomes == "") == (l.add == "") {
		m.r.problem(n, "a layer changes one thing: becomes (another move) or add (words)",
			"like {move: march, add: arms overhead}")
		ok = false
	}
	m.done()
	return l, ok && l.move != ""
}

// builds writes out the stages of a block.
func (m *mapping) builds(b *Block, p method, unit int, c *Catalog) bool {
	ok := true
	if p.method != NoBuild && len(b.Moves) > maxBuilt {
		m.r.problem(m.value("moves"), fmt.Sprintf("%d moves are too many to build up in one block", len(b.Moves)),
			fmt.Sprintf("at most %d; make two blocks of it", maxBuilt))
		return false
	}
	switch p.method {
	case AddOn, Holding:
		if len(b.Moves) < 2 && p.method == AddOn {
			m.r.problem(m.value("moves"), "one move has nothing to be added to it", "build: holding, or more moves")
			return false
		}
		b.Stages = stagesOf(b.Moves, p, unit)
	case Layering:
		b.Stages, ok = m.r.layered(b.Moves, p.layers)
	case Halving:
		b.Stages, ok = m.r.halved(b.Moves, c)
	}
	if !ok || p.hold.Move == "" || p.method == AddOn || p.method == Holding {
		return ok
	}
	if len(b.Stages) == 0 {
		b.Stages = []Stage{{b.Moves}}
	}
	for i, s := range b.Stages {
		b.Stages[i].Moves = filled(s.Moves, p.hold, wholes(countsOf(s.Moves), unit))
	}
	return true
}

// stagesOf adds one move at a time.
func stagesOf(moves []Step, p method, unit int) []Stage {
	var all []Stage
	for n := range moves {
		s := moves[:n+1]
		fill := wholes(countsOf(s), unit)
		if p.method == Holding {
			fill = wholes(countsOf(moves), unit)
		}
		once := s
		for p.method == AddOn && countsOf(s)+countsOf(once) <= fill {
			s = append(s[:len(s):len(s)], once...)
		}
		all = append(all, Stage{filled(s, p.hold, fill)})
	}
	return all
}

// wholes is the least number of counts that fills whole units.
func wholes(counts, unit int) int { return (counts + unit - 1) / unit * unit }

// filled adds the base move up to a number of counts.
func filled(moves []Step, hold Step, counts int) []Step {
	hold.Counts = counts - countsOf(moves)
	if hold.Counts == 0 {
		return moves
	}
	return append(moves[:len(moves):len(moves)], hold)
}

// layered makes one change after the other to the whole block.
func (r *reader) layered(moves []Step, layers []layer) ([]Stage, bool) {
	all := []Stage{{moves}}
	now := moves
	for _, l := range layers {
		found := false
		next := append([]Step{}, now...)
		for i := range next {
			if nameKey(moves[i].Move) != nameKey(l.move) && nameKey(next[i].Move) != nameKey(l.move) {
				continue
			}
			found = true
			if l.becomes != "" {
				next[i].Move = l.becomes
			} else {
				next[i].With = append(next[i].With[:len(next[i].With):len(next[i].With)], l.add)
			}
		}
		if !found {
			r.problem(l.node, fmt.Sprintf("the block has no move %s to change", shown(l.move)),
				"a layer names a move of the same block")
			return nil, false
		}
		all, now = append(all, Stage{next}), next
	}
	return all, true
}

// halved does every move half as often and the whole twice as often, down to
// a single repetition.
func (r *reader) halved(moves []Step, c *Catalog) ([]Stage, bool) {
	all := []Stage{{moves}}
	level := moves
	for {
		next := make([]Step, len(level))
		for i, s := range level {
			rep := 1
			if m, ok := c.Find(s.Move); ok {
				rep = max(1, m.Counts)
			}
			if s.Counts%(2*rep) != 0 {
				if len(all) == 1 {
					r.problemAt(s.Pos, fmt.Sprintf("%d counts of %s cannot be halved: one repetition takes %d", s.Counts, s.Move, rep),
						fmt.Sprintf("halving starts with 2, 4 or 8 repetitions of each move, like counts: %d", 8*rep))
				}
				return all, len(all) > 1
			}
			s.Counts /= 2
			next[i] = s
		}
		level = next
		var stage []Step
		for countsOf(stage) < countsOf(moves) {
			stage = append(stage, level...)
		}
		all = append(all, Stage{stage})
	}
}
