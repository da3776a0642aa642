package plan

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"onphrase/plan/say"
)

// mapping is one YAML mapping being read. Its keys are taken by name; what
// nobody took when it is done is unknown. So a key is known because it is
// read, and there is no second list to keep.
type mapping struct {
	r     *reader
	node  *yaml.Node
	what  string // "a set"
	pairs []pair
	known []string // as asked for
}

type pair struct {
	key, value *yaml.Node
	taken      bool
}

// mapping opens a node that must be one. Keys written twice are refused; the
// first counts.
func (r *reader) mapping(n *yaml.Node, what, example string) (*mapping, bool) {
	if n.Kind != yaml.MappingNode {
		r.problem(n, fmt.Sprintf("%s is written as keys and values, not as %s", what, form(n)), "like "+example)
		return nil, false
	}
	m := &mapping{r: r, node: n, what: what}
	first := map[string]*yaml.Node{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if key.Kind != yaml.ScalarNode || r.odd[key] {
			continue // refused already
		}
		if was, twice := first[key.Value]; twice {
			r.problem(key, fmt.Sprintf("%s is written twice in %s, first on line %d", short(key.Value), what, was.Line),
				"keep one of them")
			continue
		}
		first[key.Value] = key
		m.pairs = append(m.pairs, pair{key: key, value: value})
	}
	return m, true
}

// has tells whether a key is there, without taking it.
func (m *mapping) has(key string) bool {
	for _, p := range m.pairs {
		if p.key.Value == key {
			return true
		}
	}
	return false
}

// value is the node of a key that is there.
func (m *mapping) value(key string) *yaml.Node {
	for _, p := range m.pairs {
		if p.key.Value == key {
			return p.value
		}
	}
	return m.node
}

// take returns the value of a key, or nil when it is absent or empty.
func (m *mapping) take(key string) *yaml.Node {
	m.ask(key)
	for i, p := range m.pairs {
		if p.key.Value != key {
			continue
		}
		m.pairs[i].taken = true
		if empty(p.value) {
			m.r.problem(p.key, key+" has no value", "write one, or remove the line")
			return nil
		}
		return p.value
	}
	return nil
}

// need is take for a key that must be there.
func (m *mapping) need(key, example string) *yaml.Node {
	if !m.has(key) {
		m.ask(key)
		m.r.problem(m.node, fmt.Sprintf("%s needs %s", m.what, key), "like "+example)
		return nil
	}
	return m.take(key)
}

// list returns the values of a sequence, or nil.
func (m *mapping) list(key, example string) []*yaml.Node { return m.items(key, m.take(key), example) }

// needList is list for a key that must be there with at least one value.
func (m *mapping) needList(key, example string) []*yaml.Node {
	return m.items(key, m.need(key, example), example)
}

func (m *mapping) items(key string, n *yaml.Node, example string) []*yaml.Node {
	if n == nil {
		return nil
	}
	if n.Kind != yaml.SequenceNode {
		hint := "like " + example
		words := strings.HasPrefix(example, key+": [") && !strings.Contains(example, "{")
		if words && n.Kind == yaml.ScalarNode && !empty(n) {
			hint = fmt.Sprintf("%s: [%s]", key, short(n.Value))
		}
		m.r.problem(n, fmt.Sprintf("%s is a list, not %s", key, form(n)), hint)
		return nil
	}
	if len(n.Content) == 0 {
		m.r.problem(n, key+" is an empty list", "like "+example)
	}
	return n.Content
}

// done refuses the keys that nobody took.
func (m *mapping) done() {
	for _, p := range m.pairs {
		if !p.taken {
			m.r.problem(p.key, fmt.Sprintf("unknown key %s in %s", shown(p.key.Value), m.what), m.meant(p))
		}
	}
}

// meant guesses what an unknown key was to be.
func (m *mapping) meant(p pair) string {
	key := p.key.Value
	if empty(p.value) && m.node.Style&yaml.FlowStyle != 0 {
		return `text with a comma in it needs straight quotes: "4 x 2-2, 16 x 1-1"`
	}
	if other, ok := elsewhere[key]; ok {
		return fmt.Sprintf("%s belongs to %s", key, other)
	}
	for _, word := range otherWords[say.Fold(key)] {
		if m.knows(word) {
			return word + "?"
		}
	}
	if word, ok := say.Nearest(key, m.known); ok {
		return word + "?"
	}
	return fmt.Sprintf("%s may have %s", m.what, say.Or(m.known))
}

func (m *mapping) ask(key string) {
	if !m.knows(key) {
		m.known = append(m.known, key)
	}
}

func (m *mapping) knows(key string) bool { return slices.Contains(m.known, key) }

func empty(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// form names the form of a node for a message.
func form(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.MappingNode:
		return "keys and values"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case empty(n):
		return "nothing"
	}
	return shown(n.Value)
}
