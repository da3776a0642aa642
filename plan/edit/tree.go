package edit

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// tree is what a file says, without how it is written: keys in their order,
// lists, and values as text. An act is done to it, too, and what comes out of
// the bytes is held against that.
type tree struct {
	value string // of a leaf
	keys  []string
	items []*tree // by key, or of a list
	kind  yaml.Kind
}

func treeOf(n *yaml.Node) (*tree, error) {
	t := &tree{kind: n.Kind, value: n.Value}
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		return nil, fmt.Errorf("edit: line %d uses names for parts of the file; change it in the text", n.Line)
	case n.Kind == yaml.MappingNode:
		t.value = ""
		for i := 0; i+1 < len(n.Content); i += 2 {
			sub, err := treeOf(n.Content[i+1])
			if err != nil {
				return nil, err
			}
			t.keys, t.items = append(t.keys, n.Content[i].Value), append(t.items, sub)
		}
	case n.Kind == yaml.SequenceNode:
		t.value = ""
		for _, c := range n.Content {
			sub, err := treeOf(c)
			if err != nil {
				return nil, err
			}
			t.items = append(t.items, sub)
		}
	case n.Tag == "!!null":
		t.value = ""
	}
	return t, nil
}

func (t *tree) equal(o *tree) bool {
	return t.kind == o.kind && t.value == o.value && slices.Equal(t.keys, o.keys) &&
		slices.EqualFunc(t.items, o.items, (*tree).equal)
}

// at follows a path. The error is for a place that is not there.
func (t *tree) at(path string) (*tree, error) {
	for _, step := range steps(path) {
		i := slices.Index(t.keys, step)
		if t.kind == yaml.SequenceNode {
			n, err := strconv.Atoi(step)
			if i = n; err != nil {
				i = -1
			}
		}
		if i < 0 || i >= len(t.items) {
			return nil, fmt.Errorf("edit: there is no %s", path)
		}
		t = t.items[i]
	}
	return t, nil
}

// steps are the keys and indices of a path.
func steps(path string) []string {
	if path == "" {
		return nil
	}
	return strings.Split(path, "/")
}

// parent parts a path into the list that holds an entry, and its index.
func parent(path string) (list string, index int, err error) {
	list, last := above(path)
	if list == "" {
		return "", 0, fmt.Errorf("edit: %q is no entry of a list", path)
	}
	index, err = strconv.Atoi(last)
	return list, index, err
}

// above parts a path into that of what holds it, empty for the class, and its
// last step.
func above(path string) (up, last string) {
	i := strings.LastIndex(path, "/")
	return path[:max(0, i)], path[i+1:]
}

func (t *tree) set(key string, v *tree) {
	if i := slices.Index(t.keys, key); i >= 0 {
		t.items[i] = v
		return
	}
	t.keys, t.items = append(t.keys, key), append(t.items, v)
}

// on does the act to a tree. New keys stand where the bytes have them.
func (a Act) on(t *tree) (*tree, error) {
	switch a.Act {
	case "set":
		m, err := t.at(a.Item)
		if err != nil {
			return nil, err
		}
		v, err := treeOfJSON(a.Value)
		if err != nil {
			return nil, err
		}
		first := firstList(func(k string) bool { return slices.Contains(m.keys, k) })
		if slices.Contains(m.keys, a.Key) || first == "" {
			m.set(a.Key, v)
			return t, nil
		}
		before := slices.Index(m.keys, first)
		m.keys = slices.Insert(m.keys, before, a.Key)
		m.items = slices.Insert(m.items, before, v)
		return t, nil
	case "unset":
		m, err := t.at(a.Item)
		if err != nil {
			return nil, err
		}
		i := slices.Index(m.keys, a.Key)
		if i < 0 {
			return nil, fmt.Errorf("edit: there is no %s to take away", a.Key)
		}
		m.keys, m.items = slices.Delete(m.keys, i, i+1), slices.Delete(m.items, i, i+1)
		return t, nil
	case "insert":
		e, err := treeOfJSON(a.Entry)
		if err != nil {
			return nil, err
		}
		return t, t.insert(a.To, a.At, e)
	case "copy":
		e, err := t.at(a.Item)
		if err != nil {
			return nil, err
		}
		return t, t.insert(a.To, a.At, e)
	case "delete", "move":
		return t, a.moveOn(t)
	case "wrap":
		return t, a.wrapOn(t)
	case "unwrap":
		return t, a.unwrapOn(t)
	}
	return nil, fmt.Errorf("edit: %q is no act", a.Act)
}

func (t *tree) list(path string) (*tree, error) {
	l, err := t.at(path)
	if err == nil && l.kind != yaml.SequenceNode {
		if l.kind != yaml.ScalarNode || l.value != "" {
			return nil, fmt.Errorf("edit: %s is no list", path)
		}
		*l = tree{kind: yaml.SequenceNode} // a key without a value
	}
	return l, err
}

func (t *tree) insert(to string, at int, e *tree) error {
	l, err := t.list(to)
	if err != nil {
		return err
	}
	if at < 0 || at > len(l.items) {
		return fmt.Errorf("edit: %s has %d entries, none can be put at %d", to, len(l.items), at)
	}
	l.items = slices.Insert(l.items, at, e)
	return nil
}

func (a Act) moveOn(t *tree) error {
	from, i, err := parent(a.Item)
	if err != nil {
		return err
	}
	e, err := t.at(a.Item)
	if err != nil {
		return err
	}
	l, err := t.list(from)
	if err != nil {
		return err
	}
	if a.Act == "move" {
		if a.To == a.Item || strings.HasPrefix(a.To, a.Item+"/") {
			return errors.New("edit: nothing can be moved into itself")
		}
		if err := t.insert(a.To, a.At, e); err != nil {
			return err
		}
		if a.To == from && a.At <= i {
			i++
		}
	}
	l.items = slices.Delete(l.items, i, i+1)
	return nil
}

func (a Act) wrapOn(t *tree) error {
	from, i, err := parent(a.Item)
	if err != nil {
		return err
	}
	l, err := t.list(from)
	if err != nil {
		return err
	}
	if a.Count < 1 || i < 0 || i+a.Count > len(l.items) {
		return fmt.Errorf("edit: %s has not so many entries from there on", from)
	}
	e, err := treeOfJSON(a.Entry)
	if err != nil {
		return err
	}
	e.set("do", &tree{kind: yaml.SequenceNode, items: slices.Clone(l.items[i : i+a.Count])})
	l.items = slices.Replace(l.items, i, i+a.Count, e)
	return nil
}

func (a Act) unwrapOn(t *tree) error {
	from, i, err := parent(a.Item)
	if err != nil {
		return err
	}
	inside, err := t.list(a.Item + "/do")
	if err != nil {
		return err
	}
	l, err := t.list(from)
	if err != nil {
		return err
	}
	l.items = slices.Replace(l.items, i, i+1, inside.items...)
	return nil
}

// treeOfJSON is a value that came as JSON; an object's keys keep their order.
func treeOfJSON(raw json.RawMessage) (*tree, error) {
	dec := json.NewDecoder(bytes.NewReader(raw))
	dec.UseNumber()
	t, err := decodeTree(dec)
	if err == nil && dec.More() {
		err = errors.New("something follows it")
	}
	if err != nil {
		return nil, fmt.Errorf("edit: not a value: %w", err)
	}
	return t, nil
}

func decodeTree(dec *json.Decoder) (*tree, error) {
	tok, err := dec.Token()
	if err != nil {
		return nil, err
	}
	switch v := tok.(type) {
	case json.Delim:
		t := &tree{kind: yaml.SequenceNode}
		if v == '{' {
			t.kind = yaml.MappingNode
		}
		for dec.More() {
			if v == '{' {
				key, err := dec.Token()
				if err != nil {
					return nil, err
				}
				t.keys = append(t.keys, key.(string))
			}
			sub, err := decodeTree(dec)
			if err != nil {
				return nil, err
			}
			t.items = append(t.items, sub)
		}
		_, err := dec.Token()
		return t, err
	case nil:
		return nil, errors.New("nothing is no value")
	case bool:
		return &tree{kind: yaml.ScalarNode, value: strconv.FormatBool(v)}, nil
	}
	return &tree{kind: yaml.ScalarNode, value: fmt.Sprint(tok)}, nil
}
