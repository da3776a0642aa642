package plan

import (
	"cmp"
	"fmt"

	"gopkg.in/yaml.v3"
)

// Move is an entry of the catalogue.
type Move struct {
	Name      string
	Also      []string // other names instructors use
	Class     string   // class of movement, a key of Catalog.Limits; empty for moves without a limit
	Pattern   string   // one of Patterns; empty when it has none
	Counts    int      // counts of one repetition in choreography; 0 when it has no fixed number
	Least     Least    // what one repetition takes at the least; not set where the limit of its class decides
	Switches  bool     // one repetition ends on the other foot: the lead changes
	OneSided  bool     // works one side at a time, so that the other must follow
	Impact    Impact
	Equipment []string
}

// Least is what one repetition takes at the least, whatever the rhythm.
type Least struct {
	Length
	Evidence Evidence
	Source   string
}

// At is the least time at a tempo [s]; 0 when none is set.
func (l Least) At(bpm float64) float64 {
	if l.Counts > 0 {
		return float64(l.Counts) * 60 / bpm
	}
	return l.Length.Seconds
}

// Impact is how hard the feet land.
type Impact string

const (
	NoImpact   Impact = "none"
	LowImpact  Impact = "low"
	HighImpact Impact = "high"
)

// Patterns are the movement patterns that a class is balanced by.
var Patterns = []string{
	"squat", "lunge", "hinge", "push", "pull", "core", "carry", "locomotion", "jump", "isolation", "combination",
	"stretch",
}

const moveExample = "moves: and below it - {name: crab reach, class: press, counts: 4}"

// moves reads a list of moves. Their classes of movement are those of c.
func (r *reader) moves(list []*yaml.Node, c *Catalog, own bool) []Move {
	var all []Move
	seen := map[string]int{}
	for _, n := range list {
		mv, ok := r.move(n, c, own)
		if !ok {
			continue
		}
		for _, name := range append([]string{mv.Name}, mv.Also...) {
			key := nameKey(name)
			if line, twice := seen[key]; twice && line != n.Line {
				r.problem(n, fmt.Sprintf("the name %s is taken by the move on line %d", shown(name), line),
					"every name stands for one move")
			}
			seen[key] = n.Line
		}
		all = append(all, mv)
	}
	return all
}

// maxMove bounds the counts of one repetition: two phrases.
const maxMove = 64

func (r *reader) move(n *yaml.Node, c *Catalog, own bool) (Move, bool) {
	m, ok := r.mapping(n, "a move", "{name: crab reach, class: press, counts: 4}")
	if !ok {
		return Move{}, false
	}
	mv := Move{
		Name:      m.needText("name", "name: crab reach"),
		Also:      m.texts("also", "also: [side crab]"),
		Class:     word(m, "class", c.Classes()...),
		Pattern:   word(m, "pattern", Patterns...),
		Counts:    read(m, "counts", m.take("counts"), whole(1, maxMove)),
		Least:     m.least(own),
		Switches:  m.flag("switches"),
		OneSided:  m.flag("one-sided"),
		Impact:    word(m, "impact", NoImpact, LowImpact, HighImpact),
		Equipment: m.texts("equipment", "equipment: [dumbbells]"),
	}
	if mv.Impact == "" {
		mv.Impact = NoImpact
	}
	m.done()
	return mv, mv.Name != ""
}

// least reads what one repetition takes at the least. In the built-in
// catalogue a figure without a source is common practice.
func (m *mapping) least(own bool) Least {
	l := Least{Length: read(m, "least", m.take("least"), parseLength), Source: m.text("source")}
	switch {
	case l.Length == Length{} && l.Source == "":
	case l.Length == Length{}:
		m.r.problem(m.value("source"), "source says where least comes from, which is not there", "least: 8 counts")
	case own:
		l.Evidence, l.Source = Own, cmp.Or(l.Source, ownSource)
	case l.Source == "":
		l.Evidence, l.Source = CommonPractice, "common practice, no source"
	default:
		l.Evidence = Published
	}
	return l
}

// move reads the name of a move of the catalogue.
func (m *mapping) move(key string, c *Catalog, detail string) string {
	name := m.needText(key, key+": march")
	m.knownMove(key, name, c, detail)
	return name
}

// knownMove refuses a move that is not in the catalogue, with the nearest one
// and the way to add it. detail is the key a new move of this sort needs.
func (m *mapping) knownMove(key, name string, c *Catalog, detail string) {
	if name == "" {
		return
	}
	if _, ok := c.Find(name); ok {
		return
	}
	hint := fmt.Sprintf("add it at the top of the file: moves: [{name: %s, %s}]", short(name), detail)
	if near, ok := c.Nearest(name); ok {
		hint = fmt.Sprintf("%s? Or %s", near, hint)
	}
	m.r.problem(m.value(key), fmt.Sprintf("the move %s is not in the catalogue", shown(name)), hint)
}
