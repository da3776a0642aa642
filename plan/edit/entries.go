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

// node follows a path in the file.
func (f *file) node(path string) (*yaml.Node, error) {
	n := f.root
	for _, step := range steps(path) {
		var next *yaml.Node
		switch n.Kind {
		case yaml.MappingNode:
			next = value(n, step)
		case yaml.SequenceNode:
			if i, err := strconv.Atoi(step); err == nil && i >= 0 && i < len(n.Content) {
				next = n.Content[i]
			}
		}
		if next == nil {
			return nil, fmt.Errorf("edit: there is no %s", path)
		}
		n = next
	}
	return n, nil
}

// place is the entry of a list at a path.
func (f *file) placeAt(path string) (place, error) {
	list, i, err := parent(path)
	if err != nil {
		return place{}, err
	}
	n, err := f.node(list)
	if err != nil {
		return place{}, err
	}
	if n.Kind != yaml.SequenceNode || i < 0 || i >= len(n.Content) {
		return place{}, fmt.Errorf("edit: there is no %s", path)
	}
	return place{n, i}, nil
}

func (f *file) setKey(item, key string, v json.RawMessage) ([]byte, error) {
	m, err := f.node(item)
	if err != nil {
		return nil, err
	}
	if m.Kind != yaml.MappingNode {
		return nil, fmt.Errorf("edit: %s has no keys", item)
	}
	text, err := spell(v, flow(m))
	if err != nil {
		return nil, err
	}
	if old := value(m, key); old != nil {
		return f.replaceValue(m, key, old, text)
	}
	if before := firstList(func(k string) bool { return value(m, k) != nil }); before != "" {
		return f.rendered(f.keyBefore(m, before, key, text))
	}
	return f.rendered(f.keyBehind(m, key, text))
}

// firstList is the key of a mapping that holds its lists: new keys stand before
// it, where they are seen. Empty where there is none.
func firstList(has func(key string) bool) string {
	for _, k := range []string{"do", "parts", "moves"} {
		if has(k) {
			return k
		}
	}
	return ""
}

// replaceValue puts a text in the place of a value, one with lines of its own
// too.
func (f *file) replaceValue(m *yaml.Node, key string, old *yaml.Node, text string) ([]byte, error) {
	if end, err := f.end(old); err == nil {
		f.splice(f.offset(old), end, text)
		return f.render()
	}
	if flow(m) {
		return nil, f.cannot(old, "it runs over several lines")
	}
	behind, err := f.behindKey(m, key)
	if err != nil {
		return nil, err
	}
	f.splice(behind, f.lineEnd(f.lastLine(old)), " "+text)
	return f.render()
}

// behindKey is the offset behind a key and its colon.
func (f *file) behindKey(m *yaml.Node, key string) (int, error) {
	end, err := f.end(keyOf(m, key))
	if err != nil {
		return 0, err
	}
	return end + bytes.IndexByte(f.src[end:], ':') + 1, nil
}

// keyOf is the node of a key itself.
func keyOf(m *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(m.Content); i += 2 {
		if m.Content[i].Value == key {
			return m.Content[i]
		}
	}
	return nil
}

// lineEnd is the offset behind the text of a line, before its end.
func (f *file) lineEnd(line int) int {
	at := len(f.src)
	if line < len(f.lines) {
		at = f.lines[line]
	}
	for at > f.lines[line-1] && strings.ContainsRune("\r\n", rune(f.src[at-1])) {
		at--
	}
	return at
}

// keyBefore puts a new key before another of a mapping.
func (f *file) keyBefore(m *yaml.Node, before, key, text string) error {
	k := keyOf(m, before)
	at := f.offset(k)
	switch {
	case flow(m):
		f.splice(at, at, key+": "+text+", ")
	case m.Content[0] == k: // behind the dash
		f.splice(at, at, key+": "+text+f.eol+indent(m))
	default: // above the comments that belong to it
		line := k.Line
		for line > 1 && strings.HasPrefix(f.line(line-1), "#") {
			line--
		}
		f.insertLine(line, indent(m)+key+": "+text)
	}
	return nil
}

// keyBehind puts a new key behind the others of a mapping.
func (f *file) keyBehind(m *yaml.Node, key, text string) error {
	last := m.Content[len(m.Content)-1]
	if !flow(m) {
		f.appendLine(f.lastLine(m), indent(m)+key+": "+text)
		return nil
	}
	end, err := f.end(last)
	if err != nil {
		return err
	}
	f.splice(end, end, ", "+key+": "+text)
	return nil
}

func (f *file) rendered(err error) ([]byte, error) {
	if err != nil {
		return nil, err
	}
	return f.render()
}

func (f *file) unsetKey(item, key string) ([]byte, error) {
	m, err := f.node(item)
	if err != nil {
		return nil, err
	}
	k := keyOf(m, key)
	if k == nil {
		return nil, fmt.Errorf("edit: there is no %s to take away", key)
	}
	i := slices.Index(m.Content, k)
	v := m.Content[i+1]
	switch {
	case !flow(m) && i == 0:
		return nil, f.cannot(k, "it says what this is")
	case !flow(m):
		from, to := f.lines[k.Line-1], f.after(f.lastLine(v))
		f.splice(from, to, "")
	default:
		end, err := f.end(v)
		if err != nil {
			return nil, err
		}
		from := f.offset(k)
		if i == 0 {
			if len(m.Content) == 2 {
				return nil, f.cannot(k, "it says what this is")
			}
			f.splice(from, f.offset(m.Content[2]), "")
			return f.render()
		}
		before, err := f.end(m.Content[i-1])
		if err != nil {
			return nil, err
		}
		f.splice(before, end, "")
	}
	return f.render()
}

// after is the offset at which the line behind a line begins.
func (f *file) after(line int) int {
	if line < len(f.lines) {
		return f.lines[line]
	}
	return len(f.src)
}

// lines of an entry, with the comments directly above it, as they are written.
func (f *file) extent(at place) (from, to int) {
	return f.lines[f.head(at)-1], f.after(f.lastLine(at.node()))
}

func (f *file) insertAt(list string, at int, entry json.RawMessage) ([]byte, error) {
	l, err := f.node(list)
	if err != nil {
		return nil, err
	}
	if l.Kind == yaml.SequenceNode && flow(l) && len(l.Content) > 0 {
		text, err := spell(entry, true)
		if err != nil {
			return nil, err
		}
		return f.rendered(f.flowInsert(l, at, text))
	}
	dash, err := f.dash(list, l)
	if err != nil {
		return nil, err
	}
	text, err := entryLines(entry, dash, f.eol)
	if err != nil {
		return nil, err
	}
	return f.rendered(f.putLines(list, l, at, text))
}

func (f *file) flowInsert(l *yaml.Node, at int, text string) error {
	if at < 0 || at > len(l.Content) {
		return errors.New("edit: there is no such place in the list")
	}
	if at < len(l.Content) {
		from := f.offset(l.Content[at])
		f.splice(from, from, text+", ")
		return nil
	}
	end, err := f.end(l.Content[at-1])
	if err != nil {
		return err
	}
	f.splice(end, end, ", "+text)
	return nil
}

// dash is the space before the dashes of a list; of one that is empty, what a
// person would write below its key.
func (f *file) dash(path string, l *yaml.Node) (string, error) {
	if len(l.Content) > 0 {
		return indent(l), nil
	}
	up, _ := above(path)
	if up == "" {
		return "  ", nil // parts of the class
	}
	m, err := f.node(up)
	if err != nil {
		return "", err
	}
	if flow(m) {
		return "", f.cannot(m, "it is written in one line")
	}
	return indent(m) + "  ", nil
}

// putLines puts lines into a list of lines, before the entry at an index, or
// behind the last one.
func (f *file) putLines(path string, l *yaml.Node, at int, text string) error {
	switch {
	case at < 0 || at > len(l.Content):
		return errors.New("edit: there is no such place in the list")
	case len(l.Content) == 0:
		return f.firstEntry(path, l, text)
	case at == len(l.Content):
		to := f.after(f.lastLine(l.Content[at-1]))
		f.splice(to, to, text)
	default:
		from := f.lines[f.head(place{l, at})-1]
		f.splice(from, from, text)
	}
	return nil
}

// firstEntry writes the first entry of a list that is there and empty, as []
// or as a key without a value.
func (f *file) firstEntry(path string, l *yaml.Node, text string) error {
	text = f.eol + strings.TrimSuffix(text, f.eol)
	if l.Kind == yaml.SequenceNode {
		from := f.offset(l)
		for from > 0 && f.src[from-1] == ' ' {
			from--
		}
		f.splice(from, f.closing(f.offset(l)), text)
		return nil
	}
	up, key := above(path)
	m, err := f.node(up)
	if err != nil {
		return err
	}
	at, err := f.behindKey(m, key)
	if err != nil {
		return err
	}
	f.splice(at, at, text)
	return nil
}

func (f *file) deleteEntry(item string) ([]byte, error) {
	at, err := f.placeAt(item)
	if err != nil {
		return nil, err
	}
	return f.rendered(f.cut(item, at))
}

// cut takes an entry out. The last one of a list of lines leaves [].
func (f *file) cut(item string, at place) error {
	if flow(at.list) {
		return f.flowCut(at)
	}
	from, to := f.extent(at)
	if len(at.list.Content) > 1 {
		f.splice(from, to, "")
		return nil
	}
	path, _, err := parent(item)
	if err != nil {
		return err
	}
	up, key := above(path)
	m, err := f.node(up)
	if err != nil {
		return err
	}
	behind, err := f.behindKey(m, key)
	if err != nil {
		return err
	}
	f.splice(behind, behind, " []")
	f.splice(max(from, behind), to, "")
	return nil
}

func (f *file) flowCut(at place) error {
	l := at.list
	end, err := f.end(at.node())
	if err != nil {
		return err
	}
	from := f.offset(at.node())
	switch {
	case at.index+1 < len(l.Content):
		end = f.offset(l.Content[at.index+1])
	case at.index > 0:
		if from, err = f.end(l.Content[at.index-1]); err != nil {
			return err
		}
	}
	f.splice(from, end, "")
	return nil
}
