package edit

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"onphrase/plan"
)

// Apply makes the changes and returns the file as it is then. The file must
// be one that plan.Parse reads without problems; what is written in a way
// that cannot be changed in its place is an error, and nothing is changed.
func Apply(src []byte, changes []Change) ([]byte, error) {
	f, err := open(src)
	if err != nil {
		return nil, err
	}
	for _, c := range changes {
		if err := c.to(f); err != nil {
			return nil, err
		}
	}
	out, err := f.render()
	if err != nil {
		return nil, err
	}
	if err := yaml.Unmarshal(out, new(yaml.Node)); err != nil {
		return nil, fmt.Errorf("edit: the file cannot be changed in its place: %w", err)
	}
	return out, nil
}

// file is a class file and what is to be replaced in it.
type file struct {
	bom     []byte
	src     []byte // without the byte order mark; always ends with a line end
	added   int    // bytes of the line end added to make it so
	eol     string
	lines   []int // offset of every line, and of the end
	root    *yaml.Node
	order   []*yaml.Node       // every node, in the order of the file
	nth     map[*yaml.Node]int // of each in that order
	splices []splice
	swaps   []swapped
}

// splice replaces a stretch of the file.
type splice struct {
	from, to int
	text     string
}

// swapped are two stretches of the file that change places.
type swapped struct{ a0, a1, b0, b1 int }

func open(src []byte) (*file, error) {
	f := &file{eol: "\n", nth: map[*yaml.Node]int{}}
	mark := []byte("\ufeff")
	if bytes.HasPrefix(src, mark) {
		f.bom, src = mark, src[len(mark):]
	}
	if i := bytes.IndexByte(src, '\n'); i > 0 && src[i-1] == '\r' {
		f.eol = "\r\n"
	}
	f.src = bytes.Clone(src)
	if n := len(src); n > 0 && src[n-1] != '\n' && src[n-1] != '\r' {
		f.src = append(f.src, f.eol...)
		f.added = len(f.eol)
	}
	f.lines = lineStarts(f.src)
	var doc yaml.Node
	if err := yaml.Unmarshal(f.src, &doc); err != nil {
		return nil, fmt.Errorf("edit: %w", err)
	}
	if len(doc.Content) == 0 {
		return nil, errors.New("edit: the file is empty")
	}
	f.root = doc.Content[0]
	f.walk(f.root)
	return f, nil
}

func (f *file) walk(n *yaml.Node) {
	f.nth[n] = len(f.order)
	f.order = append(f.order, n)
	for _, c := range n.Content {
		f.walk(c)
	}
}

// lineStarts lists where lines begin, by all the line ends that YAML 1.1
// knows, as the positions of nodes count them.
func lineStarts(src []byte) []int {
	starts := []int{0}
	for i := 0; i < len(src); {
		r, n := utf8.DecodeRune(src[i:])
		if r == '\r' && i+1 < len(src) && src[i+1] == '\n' {
			n = 2
		}
		i += n
		if strings.ContainsRune("\n\r\u0085\u2028\u2029", r) {
			starts = append(starts, i)
		}
	}
	return starts
}

// offset is where a node begins.
func (f *file) offset(n *yaml.Node) int {
	i := f.lines[n.Line-1]
	for range n.Column - 1 {
		_, size := utf8.DecodeRune(f.src[i:])
		i += size
	}
	return i
}

// line is the text of a line, from 1, without its end and outer space.
func (f *file) line(n int) string {
	end := len(f.src)
	if n < len(f.lines) {
		end = f.lines[n]
	}
	return strings.TrimSpace(string(f.src[f.lines[n-1]:end]))
}

// place is an entry of a list.
type place struct {
	list  *yaml.Node
	index int
}

func (p place) node() *yaml.Node { return p.list.Content[p.index] }

// itemKeys are the keys by which an entry is an item.
var itemKeys = []string{"block", "set", "interval", "pause", "superset", "repeat"}

// item finds the item written at a place.
func (f *file) item(at plan.Pos) (*yaml.Node, place, error) { return f.entry(at, itemKeys...) }

// entry finds the entry of a list that is written at a place and has one of
// the keys.
func (f *file) entry(at plan.Pos, keys ...string) (*yaml.Node, place, error) {
	for _, list := range f.order {
		if list.Kind != yaml.SequenceNode {
			continue
		}
		for i, n := range list.Content {
			if n.Kind != yaml.MappingNode || n.Line != at.Line || n.Column != at.Col {
				continue
			}
			for _, k := range keys {
				if value(n, k) != nil {
					return n, place{list, i}, nil
				}
			}
		}
	}
	return nil, place{}, fmt.Errorf("edit: nothing to change at %d:%d", at.Line, at.Col)
}
