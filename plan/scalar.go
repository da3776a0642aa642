package plan

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"onphrase/plan/say"
)

// scalar is one value of a file, as written.
type scalar struct {
	node *yaml.Node
	text string // without typographic quotes and outer space
}

// figures is the scalar for the parsers of counts, times and rhythms: lower
// case, with typographic signs made plain. Rune for rune, so that an offset
// in it is an offset in the file.
func (s scalar) figures() string { return plain(s.node.Value) }

// plain makes typographic signs plain: dashes and the minus become "-", the
// multiplication sign becomes "x", quotes and odd spaces become spaces.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case strings.ContainsRune("‐‑‒–—−", r):
			return '-'
		case r == '×' || r == '✕' || r == '✖':
			return 'x'
		case strings.ContainsRune(openQuotes+closeQuotes+`"`, r) || unicode.IsSpace(r):
			return ' '
		}
		return unicode.ToLower(r)
	}, s)
}

const (
	openQuotes  = "“„«‘‚‹"
	closeQuotes = "”“»’‘›"
)

// unquoted removes typographic quotes that stand round a whole value, which
// YAML takes for part of it.
func unquoted(s string) string {
	s = strings.TrimSpace(s)
	r := []rune(s)
	if len(r) >= 2 && strings.ContainsRune(openQuotes, r[0]) && strings.ContainsRune(closeQuotes, r[len(r)-1]) {
		return strings.TrimSpace(string(r[1 : len(r)-1]))
	}
	return s
}

// scalar reads a node that must be one value.
func (r *reader) scalar(key string, n *yaml.Node) (scalar, bool) {
	if n == nil {
		return scalar{}, false
	}
	if n.Kind != yaml.ScalarNode {
		r.problem(n, fmt.Sprintf("%s is one value, not %s", key, form(n)), joined(key, n))
		return scalar{}, false
	}
	if empty(n) {
		r.problem(n, key+" has no value", "write one, or remove the line")
		return scalar{}, false
	}
	return scalar{node: n, text: unquoted(n.Value)}, true
}

// joined writes a list of scalars as the one value it should be.
func joined(key string, n *yaml.Node) string {
	var words []string
	for _, c := range n.Content {
		if c.Kind != yaml.ScalarNode || n.Kind != yaml.SequenceNode {
			return ""
		}
		words = append(words, c.Value)
	}
	return fmt.Sprintf("%s: %q", key, short(strings.Join(words, ", ")))
}

// line is the scalar as one line of text: line breaks become spaces, and
// control characters, which could upset a terminal or a table, are refused.
func (r *reader) line(key string, s scalar) string {
	if i := strings.IndexFunc(s.text, func(c rune) bool { return unicode.IsControl(c) && !unicode.IsSpace(c) }); i >= 0 {
		r.problem(s.node, key+" has a control character in it", "write it as plain text")
		return ""
	}
	text := strings.Join(strings.Fields(s.text), " ")
	if lost := cutOff.FindString(s.node.LineComment); lost != "" && s.node.Style == 0 {
		r.problem(s.node, key+": a # after a space begins a remark, and the rest of the line is not read",
			fmt.Sprintf(`quotes keep it together: "%s %s"`, short(text), short(lost)))
	}
	if text == "" {
		r.problem(s.node, key+" is empty", "write some text, or remove the key")
	}
	return text
}

// cutOff is a remark that was most likely meant as text: a number, as in
// "Ferry #2", or the rest of a file name.
var cutOff = regexp.MustCompile(`^#(?:[0-9].*|\S.*\.[A-Za-z0-9]{3,4})$`)

// text reads a line of text, empty when absent.
func (m *mapping) text(key string) string {
	s, ok := m.r.scalar(key, m.take(key))
	if !ok {
		return ""
	}
	return m.r.line(key, s)
}

// needText is text for a key that must be there.
func (m *mapping) needText(key, example string) string {
	s, ok := m.r.scalar(key, m.need(key, example))
	if !ok {
		return ""
	}
	return m.r.line(key, s)
}

// texts reads a list of lines of text.
func (m *mapping) texts(key, example string) []string {
	var all []string
	for _, n := range m.list(key, example) {
		if s, ok := m.r.scalar(key, n); ok {
			all = append(all, m.r.line(key, s))
		}
	}
	return all
}

// read passes a scalar to a parser and notes its fault. What is absent or
// faulty is the zero value.
func read[T any](m *mapping, key string, n *yaml.Node, parse func(string) (T, *fault)) T {
	var zero T
	s, ok := m.r.scalar(key, n)
	if !ok {
		return zero
	}
	v, f := parse(s.figures())
	if f != nil {
		m.r.fault(key, s, f)
		return zero
	}
	return v
}

// whole returns a parser of whole numbers from lo to hi. A leading zero is
// no octal: 010 is ten.
func whole(lo, hi int) func(string) (int, *fault) {
	return func(s string) (int, *fault) {
		s = strings.TrimSpace(s)
		n, err := strconv.Atoi(s)
		if !digits.MatchString(s) || err != nil {
			return 0, &fault{msg: shown(s) + " is no whole number", hint: wholeHint(s)}
		}
		if n < lo || n > hi {
			return 0, &fault{msg: fmt.Sprintf("%d is out of range", n),
				hint: fmt.Sprintf("a whole number from %d to %d", lo, hi)}
		}
		return n, nil
	}
}

var (
	digits  = regexp.MustCompile(`^[-+]?[0-9]{1,9}$`)
	decimal = regexp.MustCompile(`^[0-9]{1,9}(\.[0-9]{1,6})?$`)
	product = regexp.MustCompile(`^([0-9]{1,4}) *[x*] *([0-9]{1,4})$`)
	leading = regexp.MustCompile(`^[0-9]{1,6}`)
)

func wholeHint(s string) string {
	if f := product.FindStringSubmatch(s); f != nil {
		a, _ := strconv.Atoi(f[1])
		b, _ := strconv.Atoi(f[2])
		return fmt.Sprintf("%d?", a*b)
	}
	if n, ok := numberWords[s]; ok {
		return fmt.Sprintf("%d?", n)
	}
	if d := leading.FindString(s); d != "" && !strings.ContainsAny(s, ".,") {
		return d + "? Only the number is written here"
	}
	return "digits only, like 8"
}

// flag reads true or false, false when absent.
func (m *mapping) flag(key string) bool {
	s, ok := m.r.scalar(key, m.take(key))
	if !ok {
		return false
	}
	switch strings.TrimSpace(s.figures()) {
	case "true", "yes":
		return true
	case "false", "no":
		return false
	}
	m.r.problem(s.node, fmt.Sprintf("%s: %s is neither yes nor no", key, shown(s.text)), "true or false")
	return false
}

// word reads one of a closed list of words, empty when absent.
func word[T ~string](m *mapping, key string, words ...T) T {
	s, ok := m.r.scalar(key, m.take(key))
	if !ok {
		return ""
	}
	w, f := oneOf(s.text, words)
	if f != nil {
		m.r.fault(key, s, f)
	}
	return w
}

// oneOf finds a word in a closed list.
func oneOf[T ~string](text string, words []T) (T, *fault) {
	for _, w := range words {
		if strings.EqualFold(text, string(w)) {
			return w, nil
		}
	}
	f := &fault{msg: fmt.Sprintf("%s is not one of %s", shown(text), say.Or(words))}
	for _, meant := range otherWords[say.Fold(text)] {
		for _, w := range words {
			if string(w) == meant {
				f.hint = meant + "?"
				return "", f
			}
		}
	}
	plain := make([]string, len(words))
	for i, w := range words {
		plain[i] = string(w)
	}
	if near, ok := say.Nearest(text, plain); ok {
		f.hint = near + "?"
	}
	return "", f
}
