package plan

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Slips are what people type in good faith and YAML reads as something else: a
// colon without its space, a space from a web page, an apostrophe between
// apostrophes. The library then says what it met much later. So a file with
// problems is looked through for slips, line by line; they are mended in a
// copy, and the copy is read for whatever else is wrong.

// forgiving reads a file, and where it has problems reads it again with its
// slips mended. A file without problems is never looked at twice.
func forgiving[T any](src []byte, read func([]byte) (T, []Problem)) (T, []Problem) {
	v, problems := read(src)
	if len(problems) == 0 || !utf8.Valid(src) || len(src) > maxFile {
		return v, problems
	}
	text, slips := mend(src)
	if len(slips) == 0 {
		return v, problems
	}
	mended := []byte(joinLines(text))
	v, rest := read(mended)
	still, _ := open(mended)
	all := slips
	for _, p := range rest {
		if p.Pos.Line > len(text) {
			continue
		}
		l := text[p.Pos.Line-1]
		if l.slips > 0 && p.Pos.Line == still.broken {
			continue // the library still cannot read the line, of which enough is said
		}
		p.Pos.Col = l.column(p.Pos.Col)
		all = append(all, p)
	}
	slices.SortStableFunc(all, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Col, b.Pos.Col))
	})
	return v, slices.Compact(all)
}

// mend looks through the lines of a file and returns them mended, with a
// problem for every slip.
func mend(src []byte) ([]*slipLine, []Problem) {
	var text []*slipLine
	var all []Problem
	for i, raw := range lines([]byte(strings.TrimPrefix(string(src), "\ufeff"))) {
		l := newSlipLine(raw)
		if strings.HasPrefix(strings.TrimSpace(raw), "#") {
			text = append(text, l)
			continue
		}
		for _, find := range slipKinds {
			for range slipsInLine {
				p, ok := find(l)
				if !ok {
					break
				}
				p.Pos.Line = i + 1
				l.slips++
				all = append(all, p)
			}
		}
		text = append(text, l)
	}
	return text, all
}

// slipsInLine bounds the slips of one kind that are named in one line.
const slipsInLine = 20

func joinLines(text []*slipLine) string {
	var b strings.Builder
	for _, l := range text {
		b.WriteString(string(l.text) + "\n")
	}
	return b.String()
}

// slipLine is a line as mended so far, which knows where its signs stand in
// the file.
type slipLine struct {
	text  []rune
	from  []int // column in the file of each rune, and of the end
	slips int
}

func newSlipLine(raw string) *slipLine {
	l := &slipLine{text: []rune(raw)}
	for i := range len(l.text) + 1 {
		l.from = append(l.from, i+1)
	}
	return l
}

// column is where a column of the mended line stands in the file.
func (l *slipLine) column(mended int) int {
	return l.from[min(max(mended-1, 0), len(l.from)-1)]
}

// put writes text over n runes.
func (l *slipLine) put(at, n int, text string) {
	with := []rune(text)
	cols := make([]int, len(with))
	for i := range cols {
		cols[i] = l.from[min(at+min(i, max(n-1, 0)), len(l.from)-1)]
	}
	l.text = slices.Replace(l.text, at, at+n, with...)
	l.from = slices.Replace(l.from, at, at+n, cols...)
}

// quote puts double quotes round the runes from at to end.
func (l *slipLine) quote(at, end int) {
	l.put(end, 0, `"`)
	l.put(at, 0, `"`)
}

// problem is a slip at a rune.
func (l *slipLine) problem(at int, msg, hint string) Problem {
	return Problem{Pos: Pos{Col: l.column(at + 1)}, Msg: msg, Hint: hint}
}

// slice is the text from one rune to another, without outer space.
func (l *slipLine) slice(at, end int) string { return strings.TrimSpace(string(l.text[at:end])) }

// runes turns the byte offsets of a match in the text into offsets in runes.
func runes(text string, m []int) []int {
	out := make([]int, len(m))
	for i, b := range m {
		if out[i] = -1; b >= 0 {
			out[i] = utf8.RuneCountInString(text[:b])
		}
	}
	return out
}

// code is the line up to its remark, with what stands in quotes blanked out,
// so that a sign in it is one that YAML would act on.
func (l *slipLine) code() string {
	out := slices.Clone(l.text)
	var open rune
	for i, c := range out {
		switch {
		case open != 0:
			if c == open {
				open = 0
			}
			out[i] = 'q'
		case (c == '"' || c == '\'') && l.beginsValue(i):
			open, out[i] = c, 'q'
		case c == '#' && i > 0 && unicode.IsSpace(out[i-1]):
			return string(out[:i])
		}
	}
	return string(out)
}

// beginsValue tells whether a value may begin at a rune.
func (l *slipLine) beginsValue(i int) bool {
	for i--; i >= 0 && l.text[i] == ' '; i-- {
	}
	return i < 0 || strings.ContainsRune("[{,:-", l.text[i])
}
