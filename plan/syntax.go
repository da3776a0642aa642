package plan

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// complaint is an error of the YAML library in an instructor's words, and the
// place in the line that it is about.
type complaint struct {
	said      string
	where     *regexp.Regexp // its group is the place; without a match, the line's first sign
	msg, hint string
}

const oneColumn = "keys of one item start in one column; a new item starts with - below the last one"

var (
	nowhere = regexp.MustCompile(`()^$`)

	complaints = []complaint{
		{"mapping values are not allowed", regexp.MustCompile(`:(?: .*?)?(:)(?: |$)`),
			"a second colon, or a line indented too far",
			`text with a colon in it needs quotes: "water: two minutes"; keys of one item start in one column`},
		{"',' or '}'", regexp.MustCompile(`(\{)`),
			"a { that is not closed, or a comma missing between two keys", "{pause: water, time: 30s}"},
		{"',' or ']'", regexp.MustCompile(`(\[)`),
			"a [ that is not closed, or a comma missing", "[one.mp3, two.mp3]"},
		{"expected node content", regexp.MustCompile(`([{\[])`),
			"a { or [ that is not closed, or nothing between two commas", "{pause: water, time: 30s}"},
		{"unexpected end of stream", regexp.MustCompile(`[ :{,\[](["'])[^"']*$`),
			"a quote that is never closed", `quotes come in pairs: "4 x 2-2, 16 x 1-1"`},
		{"could not find expected ':'", nowhere,
			"a line without a colon", "key: value"},
		{"did not find expected key", nowhere,
			"a line that is indented differently from its neighbours", oneColumn},
		{"expected '-' indicator", nowhere,
			"a line that is indented differently from its neighbours", oneColumn},
		{"block sequence entries are not allowed", regexp.MustCompile(`: *(-)`),
			"a - in the middle of a line", "start every item of a list on a line of its own"},
		{"cannot start any token", regexp.MustCompile("[:{,\\[-] +([@%`\t])"),
			"a sign that cannot begin a value", "put quotes round the value"},
		{"escape", regexp.MustCompile(`(\\)`),
			`a \ in double quotes begins a code`, `write / for folders, or use single quotes`},
		{"unknown anchor", regexp.MustCompile(`[ :{,\[](\*)`),
			"a * repeats another place of the file, which is not read", "write it out; a * that is meant as text needs quotes"},
	}
)

var yamlLine = regexp.MustCompile(`line ([0-9]+): `)

// syntax turns an error of the YAML library into a problem. The library's
// line is often that of the whole list; ours is the first line after which
// the file can no longer be read.
func (r *reader) syntax(err error) Problem {
	said := strings.TrimPrefix(err.Error(), "yaml: ")
	line := 1
	if f := yamlLine.FindStringSubmatch(said); f != nil {
		line, _ = strconv.Atoi(f[1])
		said = strings.Replace(said, f[0], "", 1)
	}
	if l, ok := r.breakLine(); ok {
		line = l
	}
	p := Problem{Pos: Pos{min(line, len(r.lines)), 1}, Msg: "not readable as YAML: " + said}
	text := r.lines[p.Pos.Line-1]
	indent := text[:len(text)-len(strings.TrimLeft(text, " \t"))]
	p.Pos.Col = len(indent) + 1
	if tab := strings.IndexByte(indent, '\t'); tab >= 0 {
		return Problem{Pos{p.Pos.Line, tab + 1}, "a tab in the indentation", "indent with spaces, two a level"}
	}
	for _, c := range complaints {
		if !strings.Contains(said, c.said) {
			continue
		}
		p.Msg, p.Hint = c.msg, c.hint
		if m := c.where.FindStringSubmatchIndex(text); m != nil {
			p.Pos.Col = utf8.RuneCountInString(text[:m[2]]) + 1
		}
		break
	}
	return p
}

const (
	reach    = 40 // how many lines an item may be spread over when looking for the break
	restarts = 20 // how often the search starts again further down
)

// breakLine finds the line (from 1) with which the file stops being YAML: the
// one after the longest beginning that can be read. A beginning may also end
// inside brackets or quotes that close later, so the search looks some lines
// further than the break it found.
func (r *reader) breakLine() (int, bool) {
	good := r.lastGood(0, len(r.lines))
	for range restarts {
		further, ok := r.goodAfter(good)
		if !ok {
			break
		}
		good = r.lastGood(further, len(r.lines))
	}
	for good < len(r.lines)-1 && strings.TrimSpace(r.lines[good]) == "" {
		good++
	}
	return good + 1, good < len(r.lines)
}

// goodAfter finds a readable number of lines a little above good.
func (r *reader) goodAfter(good int) (int, bool) {
	for n := good + 1; n <= min(good+reach, len(r.lines)-1); n++ {
		if r.readable(n) {
			return n, true
		}
	}
	return 0, false
}

// lastGood narrows down, from a readable and an unreadable number of lines,
// to a readable one whose successor is not.
func (r *reader) lastGood(good, bad int) int {
	for bad-good > 1 {
		if mid := (good + bad) / 2; r.readable(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	return good
}

// readable tells whether the first n lines are YAML.
func (r *reader) readable(n int) bool {
	dec := yaml.NewDecoder(bytes.NewReader([]byte(strings.Join(r.lines[:n], "\n"))))
	for {
		if _, err := decode(dec); err != nil {
			return err.Error() == "EOF"
		}
	}
}
