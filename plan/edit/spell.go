package edit

import (
	"encoding/json"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// spell writes a value that came as JSON in one line, as YAML reads it back.
func spell(raw json.RawMessage, inFlow bool) (string, error) {
	t, err := treeOfJSON(raw)
	if err != nil {
		return "", err
	}
	return t.spell(inFlow, isBare(raw)), nil
}

// isBare tells of a number or a truth value, which needs no quotes.
func isBare(raw json.RawMessage) bool {
	text := strings.TrimSpace(string(raw))
	return text != "" && !strings.ContainsAny(text[:1], `"[{`)
}

func (t *tree) spell(inFlow, bare bool) string {
	var parts []string
	switch t.kind {
	case yaml.MappingNode:
		for i, k := range t.keys {
			parts = append(parts, name(k, true)+": "+t.items[i].spell(true, false))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case yaml.SequenceNode:
		for _, e := range t.items {
			parts = append(parts, e.spell(true, false))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	if bare || isFigure(t.value) {
		return t.value
	}
	return name(t.value, inFlow)
}

// isFigure tells of a text that is digits only: it may stand without quotes.
func isFigure(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == "" && (s[0] != '0' || s == "0")
}

// entryLines writes an entry of a list as lines that begin with its dash: in
// one line, or, where it holds a list of its own, a key a line.
func entryLines(raw json.RawMessage, indent, eol string) (string, error) {
	t, err := treeOfJSON(raw)
	if err != nil {
		return "", err
	}
	if t.kind != yaml.MappingNode || !t.holdsList() {
		return indent + "- " + t.spell(false, false) + eol, nil
	}
	var b strings.Builder
	for i, k := range t.keys {
		lead := indent + "  "
		if i == 0 {
			lead = indent + "- "
		}
		v := t.items[i]
		if v.kind != yaml.SequenceNode || !v.holdsMapping() {
			fmt.Fprintf(&b, "%s%s: %s%s", lead, k, v.spell(false, false), eol)
			continue
		}
		fmt.Fprintf(&b, "%s%s:%s", lead, k, eol)
		for _, e := range v.items {
			fmt.Fprintf(&b, "%s    - %s%s", indent, e.spell(false, false), eol)
		}
	}
	return b.String(), nil
}

// holdsList tells whether a mapping has a list of mappings in it.
func (t *tree) holdsList() bool {
	for _, v := range t.items {
		if v.kind == yaml.SequenceNode && (v.holdsMapping() || len(v.items) == 0) {
			return true
		}
	}
	return false
}

func (t *tree) holdsMapping() bool {
	for _, v := range t.items {
		if v.kind == yaml.MappingNode {
			return true
		}
	}
	return false
}
