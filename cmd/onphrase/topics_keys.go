package main

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// schemaNode is a place in a JSON Schema, read as YAML, which keeps the order
// of the keys.
type schemaNode struct{ *yaml.Node }

// readKeys opens a schema of our own; one that cannot be read is a fault of the
// program.
func readKeys(text string) schemaNode {
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(text), &doc); err != nil {
		panic(err)
	}
	return schemaNode{doc.Content[0]}
}

// at is the value below keys, without a node where there is none.
func (n schemaNode) at(keys ...string) schemaNode {
	for _, key := range keys {
		var below *yaml.Node
		for i := 0; n.Node != nil && i+1 < len(n.Content); i += 2 {
			if n.Content[i].Value == key {
				below = n.Content[i+1]
			}
		}
		n = schemaNode{below}
	}
	return n
}

// text is the scalar below a key, or empty.
func (n schemaNode) text(key string) string {
	if v := n.at(key); v.Node != nil {
		return v.Value
	}
	return ""
}

// object finds a kind of mapping: a definition, or the entries of a list of one
// (block.moves).
func (n schemaNode) object(path string) schemaNode {
	if path == "" {
		return n
	}
	def, list, deep := strings.Cut(path, ".")
	n = n.at("$defs", def)
	if deep {
		n = n.at("properties", list, "items")
	}
	return n
}

// key is one key of a mapping, with what it points to.
type key struct {
	name     string
	schema   schemaNode
	refers   schemaNode
	required bool
}

func (n schemaNode) keys(root schemaNode) []key {
	var all []key
	var needed []string
	if r := n.at("required"); r.Node != nil {
		for _, v := range r.Content {
			needed = append(needed, v.Value)
		}
	}
	props := n.at("properties")
	for i := 0; i+1 < len(props.Content); i += 2 {
		k := key{name: props.Content[i].Value, schema: schemaNode{props.Content[i+1]}}
		k.required = slices.Contains(needed, k.name)
		if def, ok := strings.CutPrefix(k.schema.text("$ref"), "#/$defs/"); ok {
			k.refers = root.at("$defs", def)
		}
		all = append(all, k)
	}
	return all
}

// words says what the key means, what it may be, and when it may be left out.
func (k key) words() string {
	text := k.schema.text("description")
	if kind := k.kind(); kind != "" {
		text += "; " + kind
	}
	switch value := k.schema.text("default"); {
	case k.required:
		text += "; required"
	case value != "":
		text += "; default: " + value
	}
	example := k.schema.at("examples")
	if example.Node == nil {
		example = k.refers.at("examples")
	}
	if example.Node != nil {
		var all []string
		for _, e := range example.Content {
			all = append(all, written(e))
		}
		text += "; like " + strings.Join(all, ", ")
	}
	return text
}

// kind is what a value may be.
func (k key) kind() string {
	if words := k.schema.at("enum"); words.Node != nil {
		var all []string
		for _, w := range words.Content {
			all = append(all, w.Value)
		}
		return "one of " + strings.Join(all, ", ")
	}
	least, most := k.schema.text("minimum"), k.schema.text("maximum")
	switch kind := k.schema.text("type"); kind {
	case "integer", "number":
		return fmt.Sprintf("%s to %s", least, most)
	case "boolean":
		return "true or false"
	case "array":
		return "a list"
	}
	return ""
}

// written is an example as a class file has it.
func written(n *yaml.Node) string {
	switch n.Kind {
	case yaml.SequenceNode:
		var all []string
		for _, c := range n.Content {
			all = append(all, written(c))
		}
		return "[" + strings.Join(all, ", ") + "]"
	case yaml.MappingNode:
		var all []string
		for i := 0; i+1 < len(n.Content); i += 2 {
			all = append(all, n.Content[i].Value+": "+written(n.Content[i+1]))
		}
		return "{" + strings.Join(all, ", ") + "}"
	}
	if strings.ContainsAny(n.Value, ",:") {
		return `"` + n.Value + `"`
	}
	return n.Value
}
