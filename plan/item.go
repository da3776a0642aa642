package plan

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"onphrase/plan/say"
)

// Item is one thing the class does: a block, a set, an interval or a pause.
// What is written once and done more often (rounds, a superset, a series, a
// repeat) is as many items, with one place in the file.
type Item struct {
	Pos    Pos
	Name   string // "A", "bent-over row", "standing climber", "water"
	On     Snap
	Cue    string // the instructor's own words
	Setup  Length // needed before the item starts, for weights or the way to the floor
	Easier string
	Harder string
	Known  []Known // findings that she stands by
	Work   Work

	Rounds  []Round // that it belongs to, the outermost first
	Repeats Pos     // where the item is written that it repeats; zero when it is written out
}

// Round is one of the times that something is done: all of a part, a
// superset, a series.
type Round struct {
	Of      string // name of the superset, or of the move of a series; empty for the part
	N, Last int    // this one and the last, from 1
	Series  bool   // of an interval
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

// itemKinds lists the keys that make an item what it is, and who reads the
// rest of it.
func itemKinds() []itemKind {
	return []itemKind{
		{"block", "a block", one(readBlock)},
		{"set", "a set", one(readSet)},
		{"interval", "an interval", readIntervals},
		{"pause", "a pause", one(readPause)},
		{"superset", "a superset", readSuperset},
		{"repeat", "a repeat", readRepeat},
	}
}

type itemKind struct {
	key, what string
	read      func(*mapping, Item, *Catalog) []Item // a bad one as far as it was understood
}

// one is the reader of an entry that is one item.
func one(work func(*mapping, *Item, *Catalog) Work) func(*mapping, Item, *Catalog) []Item {
	return func(m *mapping, it Item, c *Catalog) []Item {
		m.head(&it)
		it.Work = work(m, &it, c)
		m.r.total++
		return []Item{it}
	}
}

// head reads the keys that any item may have.
func (m *mapping) head(it *Item) {
	it.On = word(m, "on", OnPhrase, OnEight, OnCount, OnClock)
	m.words(it)
}

// words reads what is said of an item, and what it needs beforehand. What is
// not written stays.
func (m *mapping) words(it *Item) {
	m.keep("cue", &it.Cue)
	if n := m.take("setup"); n != nil {
		it.Setup = read(m, "setup", n, parseLength)
	}
	m.keep("easier", &it.Easier)
	m.keep("harder", &it.Harder)
	it.Known = m.stands()
}

// keep reads a line of text over what is there already.
func (m *mapping) keep(key string, to *string) {
	if text := m.text(key); text != "" {
		*to = text
	}
}

const itemExample = "- {pause: water, time: 30s}"

// item reads one entry of do.
func (r *reader) item(n *yaml.Node, c *Catalog) []Item {
	m, ok := r.mapping(n, "an item", itemExample)
	if !ok {
		return nil
	}
	kind, ok := m.itemKind()
	if !ok {
		return nil
	}
	m.what = kind.what
	it := Item{Pos: at(n), Name: m.text(kind.key)}
	items := kind.read(m, it, c)
	m.done()
	r.tell(it.Name, items)
	return items
}

// itemKind finds the one key that says what an item is.
func (m *mapping) itemKind() (itemKind, bool) {
	var found []itemKind
	var keys []string
	for _, k := range itemKinds() {
		keys = append(keys, k.key)
		if !m.has(k.key) {
			continue
		}
		if found = append(found, k); len(found) > 1 {
			m.r.problem(m.node, fmt.Sprintf("an item is both %s and %s", found[0].what, k.what), m.parted(k.key, m.take(k.key)))
		}
	}
	if len(found) > 0 {
		return found[0], true
	}
	m.known = keys
	for _, p := range m.pairs {
		if hint := m.meantKind(p); hint != "" {
			m.r.problem(p.key, fmt.Sprintf("unknown key %s in an item", shown(p.key.Value)), hint)
			return itemKind{}, false
		}
	}
	m.r.problem(m.node, "an item must be a "+say.Or(keys), "like "+itemExample)
	return itemKind{}, false
}

// parted says how to part two items, or what a number beside repeat means.
func (m *mapping) parted(key string, n *yaml.Node) string {
	if key != "repeat" || n == nil || !digits.MatchString(n.Value) {
		return "make two items of it"
	}
	if m.has("block") {
		return "times: " + n.Value + "?"
	}
	return "a superset with rounds: " + n.Value + "?"
}

// meantKind guesses that a mistyped key was to say what the item is.
func (m *mapping) meantKind(p pair) string {
	if _, ok := elsewhere[p.key.Value]; ok {
		return ""
	}
	for _, word := range otherWords[say.Fold(p.key.Value)] {
		if m.knows(word) {
			return word + "?"
		}
	}
	if word, ok := say.Nearest(p.key.Value, m.known); ok {
		return word + "?"
	}
	return ""
}
