package edit

import (
	"bytes"
	"strings"

	"gopkg.in/yaml.v3"
)

// end is the offset behind a value that stands between other things of its
// line: a scalar on one line, or a collection in brackets.
func (f *file) end(n *yaml.Node) (int, error) {
	from := f.offset(n)
	if n.Kind != yaml.ScalarNode {
		if !flow(n) || !strings.ContainsRune("[{", rune(f.src[from])) {
			return 0, f.cannot(n, "it has lines of its own")
		}
		return f.closing(from), nil
	}
	switch {
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return 0, f.cannot(n, "it has lines of its own")
	case n.Style&yaml.DoubleQuotedStyle != 0 && f.src[from] == '"', n.Style&yaml.SingleQuotedStyle != 0 &&
		f.src[from] == '\'':
		return f.quoted(from), nil
	case bytes.HasPrefix(f.src[from:], []byte(n.Value)):
		return from + len(n.Value), nil
	}
	return 0, f.cannot(n, "it runs over several lines, or has a name in front of it")
}

// quoted is the offset behind the quotes that open at i.
func (f *file) quoted(i int) int {
	quote := f.src[i]
	for i++; i < len(f.src); i++ {
		switch c := f.src[i]; {
		case c == '\\' && quote == '"':
			i++
		case c == quote && quote == '\'' && i+1 < len(f.src) && f.src[i+1] == quote:
			i++
		case c == quote:
			return i + 1
		}
	}
	return len(f.src)
}

// closing is the offset behind the bracket that matches the one at i.
func (f *file) closing(i int) int {
	depth := 0
	for i < len(f.src) {
		switch c := f.src[i]; {
		case (c == '"' || c == '\'') && opensQuote(f.src[:i]):
			i = f.quoted(i)
			continue
		case c == '#' && strings.ContainsRune(" \t\r\n", rune(f.src[i-1])):
			for i < len(f.src) && f.src[i] != '\n' && f.src[i] != '\r' {
				i++
			}
			continue
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			if depth--; depth == 0 {
				return i + 1
			}
		}
		i++
	}
	return len(f.src)
}

// opensQuote reports whether a quote sign behind that text opens a quoted
// value: inside a word, as in "don't", it is a letter like others.
func opensQuote(before []byte) bool {
	before = bytes.TrimRight(before, " \t\r\n")
	return len(before) > 0 && strings.ContainsRune("[{,:", rune(before[len(before)-1]))
}

// lastLine is the last line of a value that has lines of its own, comments
// behind it not counted.
func (f *file) lastLine(n *yaml.Node) int {
	last := n
	for len(last.Content) > 0 {
		last = last.Content[len(last.Content)-1]
	}
	next := len(f.lines) // the line behind the file
	if i := f.nth[last]; i+1 < len(f.order) {
		next = f.order[i+1].Line
	}
	line := max(next-1, n.Line)
	for line > n.Line && f.between(line) && !f.inText(last, line) {
		line--
	}
	return line
}

// inText reports whether a line is one of a text of several lines: a # there is
// a letter like others.
func (f *file) inText(n *yaml.Node, line int) bool {
	if n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) == 0 || line <= n.Line || f.line(line) == "" {
		return false
	}
	first := n.Line + 1
	for first < line && f.line(first) == "" {
		first++
	}
	return f.space(line) >= f.space(first)
}

// space is how many blanks a line begins with.
func (f *file) space(line int) int {
	i := f.lines[line-1]
	for i < len(f.src) && f.src[i] == ' ' {
		i++
	}
	return i - f.lines[line-1]
}

// between reports whether a line has nothing of a value in it.
func (f *file) between(n int) bool {
	switch text := f.line(n); text {
	case "", "-", "---", "...":
		return true
	default:
		return text[0] == '#'
	}
}

// head is the line on which an entry of a list begins, with the comments
// directly above it.
func (f *file) head(at place) int {
	line := at.node().Line
	for line > 1 && f.dashAlone(line) {
		line--
	}
	for line > 1 && strings.HasPrefix(f.line(line-1), "#") {
		line--
	}
	return line
}

// dashAlone reports whether the dash of an entry stands on the line before.
func (f *file) dashAlone(line int) bool { return f.line(line-1) == "-" }
