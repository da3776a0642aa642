package plan

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// Item is one thing the class does: a block, a set, an interval or a pause.
type Item struct {
	Pos    Pos
	Name   string // "A", "bent-over row", "standing climber", "water"
	On     Snap
	Cue    string // the instructor's own words
	Setup  Length // needed before the item starts, for weights or the way to the floor
	Easier string
	Harder string
	Work   Work
}

// Work is what an item consists of: Block, Set, Interval or Pause.
type Work interface{ work() }

// Snap is what an item's start and length are laid on.
type Snap string

const (
	OnDefault Snap = "" // block: phrase; set: eight; interval, pause: nearest eight
	OnPhrase  Snap = "phrase"
	OnEight   Snap = "eight"
	OnCount   Snap = "count"
	OnClock   Snap = "clock" // by the clock, not by the music
)

// itemKinds are the keys that make an item what it is, and who reads the
// rest of it.
var itemKinds = []struct {
	key, what string
	read      func(*mapping, *Item, *Catalog) Work
}{
	{"block", "a block", readBlock},
	{"set", "a set", readSet},
	{"interval", "an interval", readInterval},
	{"pause", "a pause", readPause},
}

const itemExample = "- {pause: water, time: 30s}"

// item reads one entry of do.
func (r *reader) item(n *yaml.Node, c *Catalog) (Item, bool) {
	m, ok := r.mapping(n, "an item", itemExample)
	if !ok {
		return Item{}, false
	}
	kind, ok := m.itemKind()
	if !ok {
		return Item{}, false
	}
	m.what = itemKinds[kind].what
	it := Item{
		Pos:    at(n),
		Name:   m.text(itemKinds[kind].key),
		On:     word(m, "on", OnPhrase, OnEight, OnCount, OnClock),
		Cue:    m.text("cue"),
		Setup:  read(m, "setup", m.take("setup"), parseLength),
		Easier: m.text("easier"),
		Harder: m.text("harder"),
	}
	it.Work = itemKinds[kind].read(m, &it, c)
	m.done()
	return it, true
}

// itemKind finds the one key that says what an item is.
func (m *mapping) itemKind() (int, bool) {
	found := -1
	var keys []string
	for i, k := range itemKinds {
		keys = append(keys, k.key)
		switch {
		case !m.has(k.key):
		case found >= 0:
			m.take(k.key)
			m.r.problem(m.node, fmt.Sprintf("an item is both %s and %s", itemKinds[found].what, k.what), "make two items of it")
		default:
			found = i
		}
	}
	if found >= 0 {
		return found, true
	}
	m.known = keys
	for _, p := range m.pairs {
		if hint := m.meantKind(p); hint != "" {
			m.r.problem(p.key, fmt.Sprintf("unknown key %s in an item", shown(p.key.Value)), hint)
			return 0, false
		}
	}
	m.r.problem(m.node, "an item must be a "+listed(keys), "like "+itemExample)
	return 0, false
}

// meantKind guesses that a mistyped key was to say what the item is.
func (m *mapping) meantKind(p pair) string {
	if _, ok := elsewhere[p.key.Value]; ok {
		return ""
	}
	for _, word := range otherWords[fold(p.key.Value)] {
		if m.knows(word) {
			return word + "?"
		}
	}
	if word, ok := nearest(p.key.Value, m.known); ok {
		return word + "?"
	}
	return ""
}
