package plan

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// maxFile bounds the size of a class file [bytes]. A class of a hundred parts
// takes less than half of it.
const maxFile = 256 << 10

// open reads the one YAML document of a file, or what stands above the line
// that breaks it. The node is nil when there is nothing to walk; the reader's
// problems then say why.
func open(src []byte) (*reader, *yaml.Node) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	r := &reader{odd: map[*yaml.Node]bool{}, told: map[string][]Item{}}
	if plain, p, ok := oldEncoding(src); ok {
		src = plain
		r.problems = append(r.problems, p)
	}
	if p, ok := notText(src); ok {
		r.problems = append(r.problems, p)
		return r, nil
	}
	r.lines = lines(src)
	dec := yaml.NewDecoder(bytes.NewReader(src))
	root, err := decode(dec)
	switch {
	case errors.Is(err, io.EOF) || err == nil && (len(root.Content) == 0 || empty(root.Content[0])):
		r.problemAt(Pos{1, 1}, "the file is empty", versionHint)
		return r, nil
	case err != nil:
		broken := r.syntax(err)
		r.broken = broken.Pos.Line
		r.problems = append(r.problems, broken)
		return r, r.above(broken.Pos.Line)
	}
	r.oneDocument(dec)
	r.refuseOdd(root.Content[0])
	return r, root.Content[0]
}

// above reads what stands above a line that breaks the file. Nothing is said
// of the nodes that the break may have cut short.
func (r *reader) above(line int) *yaml.Node {
	for _, l := range r.lines[line-1:] {
		if strings.HasPrefix(l, "moves:") {
			return nil // moves named above may be described below
		}
	}
	dec := yaml.NewDecoder(strings.NewReader(strings.Join(r.lines[:line-1], "\n")))
	root, err := decode(dec)
	if err != nil || len(root.Content) == 0 || empty(root.Content[0]) {
		return nil
	}
	r.refuseOdd(root.Content[0])
	for n := root; len(n.Content) > 0; {
		last := len(n.Content) - 1
		if n.Kind == yaml.MappingNode && empty(n.Content[last]) {
			r.odd[n.Content[last-1]] = true
		}
		n = n.Content[last]
		r.odd[n] = true
	}
	return root.Content[0]
}

// decode reads the next document as nodes. The library is known to panic on
// some broken input; that becomes an error.
func decode(dec *yaml.Decoder) (root *yaml.Node, err error) {
	defer func() {
		if v := recover(); v != nil {
			err = fmt.Errorf("yaml: %v", v)
		}
	}()
	root = new(yaml.Node)
	return root, dec.Decode(root)
}

// oneDocument refuses whatever follows the first document, which would
// otherwise be ignored in silence.
func (r *reader) oneDocument(dec *yaml.Decoder) {
	next, err := decode(dec)
	if errors.Is(err, io.EOF) {
		return
	}
	if err != nil {
		r.problems = append(r.problems, r.syntax(err))
		return
	}
	r.problem(next, "a second document begins here",
		"one file holds one class: remove the line ---, or put the rest into a file of its own")
}

// oldEncoding recognises text saved in an encoding of one byte a letter, as
// editors of the last century did it, and makes it readable, so that whatever
// else is wrong is said, too. Which letters were meant nobody knows.
func oldEncoding(src []byte) ([]byte, Problem, bool) {
	if utf8.Valid(src) || len(src) > maxFile || utf16(src) {
		return nil, Problem{}, false
	}
	var plain []byte
	first := Pos{}
	line, col := 1, 1
	for i := 0; i < len(src); {
		c, n := utf8.DecodeRune(src[i:])
		switch {
		case c == utf8.RuneError && n == 1:
			if first == (Pos{}) {
				first = Pos{line, col}
			}
			c = '?'
		case c < ' ' && c != '\n' && c != '\r' && c != '\t':
			return nil, Problem{}, false // music, or something else that is no text
		case c == '\n':
			line, col = line+1, 0
		}
		plain = utf8.AppendRune(plain, c)
		i, col = i+n, col+1
	}
	return plain, Problem{
		Pos: first, Msg: "a letter in an old encoding, not in UTF-8",
		Hint: "save the file again, with UTF-8 as encoding; then look at ä, é and the like",
	}, true
}

// utf16 tells whether a file begins with the mark of that encoding.
func utf16(src []byte) bool {
	return bytes.HasPrefix(src, []byte("\xff\xfe")) || bytes.HasPrefix(src, []byte("\xfe\xff"))
}

// notText recognises files that no editor of text wrote.
func notText(src []byte) (Problem, bool) {
	switch {
	case len(src) > maxFile:
		return Problem{Pos{1, 1}, fmt.Sprintf("the file has %d bytes, more than the %d a class file may have", len(src),
			maxFile), "is it a class file?"}, true
	case utf16(src):
		return Problem{Pos{1, 1}, "the file is saved as UTF-16", "save it again as UTF-8"}, true
	}
	line, col := 1, 1
	for i := 0; i < len(src); {
		c, n := utf8.DecodeRune(src[i:])
		switch {
		case c == utf8.RuneError && n == 1:
			return Problem{Pos{line, col}, "this is not text in UTF-8",
				"save the file again as UTF-8; if it is music, name the class file instead"}, true
		case c < ' ' && c != '\n' && c != '\r' && c != '\t' || c == 0x7f:
			return Problem{Pos{line, col}, fmt.Sprintf("control character %#x in the file", c),
				"a class file is plain text; if this is music, name the class file instead"}, true
		case c == '\n':
			line, col = line+1, 0
		}
		i, col = i+n, col+1
	}
	return Problem{}, false
}

// lines splits a file at any of the usual line ends.
func lines(src []byte) []string {
	s := strings.ReplaceAll(string(src), "\r\n", "\n")
	return strings.Split(strings.ReplaceAll(s, "\r", "\n"), "\n")
}

// refuseOdd refuses the parts of YAML that a class file does without, and
// marks their nodes so that nothing else is said of them.
func (r *reader) refuseOdd(n *yaml.Node) {
	if n.Kind == yaml.MappingNode {
		for i := 0; i < len(n.Content); i += 2 {
			key := n.Content[i]
			switch {
			case key.Tag == "!!merge" || key.Value == "<<":
				r.refuse(key, "merge keys (<<) are not read", ownLine)
			case key.Kind == yaml.MappingNode || key.Kind == yaml.SequenceNode:
				r.refuse(key, "a key must be one word, not "+form(key), "write word: value")
			}
		}
	}
	switch {
	case n.Kind == yaml.AliasNode:
		r.refuse(n, fmt.Sprintf("*%s repeats another place of the file, which is not read", n.Value), ownLine)
	case n.Style&yaml.TaggedStyle != 0:
		r.refuse(n, fmt.Sprintf("tags like %s are not read", short(n.Tag)),
			"remove it; text that looks like a number may stand in quotes")
	}
	for _, c := range n.Content {
		r.refuseOdd(c)
	}
}

const ownLine = "write it out: every item needs a line of its own, which findings point to and changes go to"

func (r *reader) refuse(n *yaml.Node, msg, hint string) {
	r.problem(n, msg, hint)
	r.odd[n] = true
}
