package edit

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// set gives a key of an item a value: in its place, or behind the item's
// other keys.
func (f *file) set(m *yaml.Node, key, text string) error {
	if n := value(m, key); n != nil {
		return f.replace(n, text, flow(m))
	}
	return f.keyBehind(m, key, plain(text, flow(m)))
}

// setBefore is set for a part, whose new keys stand before its items.
func (f *file) setBefore(m *yaml.Node, before, key, text string) error {
	if value(m, key) != nil {
		return f.set(m, key, text)
	}
	for i := 0; i+1 < len(m.Content); i += 2 {
		k := m.Content[i]
		if k.Value != before {
			continue
		}
		if flow(m) || i == 0 {
			at := f.offset(k)
			sep := ", "
			if !flow(m) {
				sep = f.eol + indent(m)
			}
			f.splice(at, at, fmt.Sprintf("%s: %s%s", key, plain(text, flow(m)), sep))
			return nil
		}
		f.appendLine(f.lastLine(m.Content[i-1]), indent(m)+key+": "+plain(text, false))
		return nil
	}
	return f.cannot(m, before+" is missing")
}

// replace puts another value in the place of a scalar, in its own quotes.
func (f *file) replace(n *yaml.Node, text string, inFlow bool) error {
	from := f.offset(n)
	to, err := f.end(n)
	if err != nil {
		return err
	}
	switch {
	case n.Kind != yaml.ScalarNode:
		return f.cannot(n, "it is not one value")
	case n.Style&yaml.DoubleQuotedStyle != 0:
		text = `"` + text + `"`
	case n.Style&yaml.SingleQuotedStyle != 0:
		text = "'" + text + "'"
	default:
		text = plain(text, inFlow)
	}
	f.splice(from, to, text)
	return nil
}

// plain puts quotes round a value that would end at its comma without them.
func plain(text string, inFlow bool) string {
	if inFlow && strings.Contains(text, ",") {
		return `"` + text + `"`
	}
	return text
}

// insertEntry puts an entry before another one of a list, above the comments
// that belong to that.
func (f *file) insertEntry(at place, text string) error {
	if flow(at.list) {
		from := f.offset(at.node())
		f.splice(from, from, text+", ")
		return nil
	}
	f.insertLine(f.head(at), indent(at.list)+"- "+text)
	return nil
}

// swap exchanges two entries of one list.
func (f *file) swap(a, b place) error {
	if a.list != b.list || a.index+1 != b.index {
		return f.cannot(b.node(), "it does not follow the item it is to be exchanged with")
	}
	if !flow(a.list) {
		from, mid := f.lines[f.head(a)-1], f.lines[f.head(b)-1]
		f.swaps = append(f.swaps, swapped{from, f.lines[f.lastLine(a.node())], mid, f.lines[f.lastLine(b.node())]})
		return nil
	}
	aEnd, err := f.end(a.node())
	if err != nil {
		return err
	}
	bEnd, err := f.end(b.node())
	if err != nil {
		return err
	}
	f.swaps = append(f.swaps, swapped{f.offset(a.node()), aEnd, f.offset(b.node()), bEnd})
	return nil
}

// insertLine puts a line before the line of that number, from 1.
func (f *file) insertLine(before int, text string) {
	at := f.lines[before-1]
	f.splice(at, at, text+f.eol)
}

// appendLine puts a line behind the line of that number, as a part of what
// that belongs to.
func (f *file) appendLine(after int, text string) {
	at := f.lineEnd(after)
	f.splice(at, at, f.eol+text)
}

func (f *file) splice(from, to int, text string) {
	f.splices = append(f.splices, splice{from, to, text})
}

func flow(n *yaml.Node) bool { return n.Style&yaml.FlowStyle != 0 }

// indent is the space before the keys of a mapping or the dashes of a list.
func indent(n *yaml.Node) string { return strings.Repeat(" ", n.Column-1) }

func (f *file) cannot(n *yaml.Node, why string) error {
	return fmt.Errorf("edit: line %d cannot be changed in its place: %s", n.Line, why)
}
