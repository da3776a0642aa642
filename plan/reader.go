package plan

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// reader walks the YAML nodes of one file and collects what is wrong with
// them. It never stops at a problem.
type reader struct {
	lines    []string            // of the file, to find places inside a scalar
	odd      map[*yaml.Node]bool // nodes of which nothing (more) is to be said
	problems []Problem
	broken   int               // the line that the YAML library cannot read; 0 when it reads all
	told     map[string][]Item // what repeat may name, by nameKey
	total    int               // items read so far
}

// fault is a problem inside one scalar, found by a parser that knows nothing
// of the file.
type fault struct {
	at   int // where in the scalar [runes]
	msg  string
	hint string
}

// Error says what is wrong and what was probably meant, in one line.
func (f *fault) Error() string {
	if f.hint == "" {
		return f.msg
	}
	return f.msg + " (" + f.hint + ")"
}

// problem notes what is wrong at a node, unless the node's very form was
// refused already, or it was cut short.
func (r *reader) problem(n *yaml.Node, msg, hint string) {
	if !r.odd[n] {
		r.problemAt(at(n), msg, hint)
	}
}

func (r *reader) problemAt(p Pos, msg, hint string) {
	r.problems = append(r.problems, Problem{Pos: p, Msg: msg, Hint: hint})
}

// fault notes a problem inside the scalar of a key.
func (r *reader) fault(key string, s scalar, f *fault) {
	if !r.odd[s.node] {
		r.problemAt(r.place(s.node, f.at), key+": "+f.msg, f.hint)
	}
}

// sorted returns the problems in the order of the file, each once.
func (r *reader) sorted() []Problem {
	slices.SortStableFunc(r.problems, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Col, b.Pos.Col))
	})
	return slices.Compact(r.problems)
}

func at(n *yaml.Node) Pos { return Pos{Line: max(n.Line, 1), Col: max(n.Column, 1)} }

// place is the position of a rune inside a scalar. Where the file does not
// hold the scalar as it reads (escapes, folded lines), it is the scalar's own.
func (r *reader) place(n *yaml.Node, offset int) Pos {
	p := at(n)
	if p.Line > len(r.lines) {
		return p
	}
	line := []rune(r.lines[p.Line-1])
	if p.Col > len(line) {
		return p
	}
	rest, quote := string(line[p.Col-1:]), 0
	if n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0 {
		rest, quote = rest[1:], 1
	}
	if !strings.HasPrefix(rest, n.Value) || offset > utf8.RuneCountInString(n.Value) {
		return p
	}
	p.Col += quote + offset
	return p
}

// maxShown bounds what a message repeats of the file [runes].
const maxShown = 40

// shown is a piece of the file as a message repeats it.
func shown(s string) string { return strconv.Quote(clipped(s)) }

// short is a piece of the file as a hint builds on it, without what could
// upset a terminal.
func short(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return '?'
		}
		return r
	}, clipped(s))
}

func clipped(s string) string {
	if r := []rune(s); len(r) > maxShown {
		return string(r[:maxShown]) + "…"
	}
	return s
}
