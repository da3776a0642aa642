package say

import (
	"regexp"
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// Columns is the width of a string in a terminal: two columns for wide
// letters, none for marks that sit on another letter.
//
// Ref: Unicode Standard Annex 11, East Asian Width.
func Columns(s string) int {
	n := 0
	for _, r := range s {
		n += runeColumns(r)
	}
	return n
}

func runeColumns(r rune) int {
	if r == 0x200D || unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// Pad adds blanks after a string up to n columns.
func Pad(s string, n int) string { return s + strings.Repeat(" ", max(0, n-Columns(s))) }

// OneLine makes text from files fit to print: no line breaks, no control
// characters that a terminal would obey.
func OneLine(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r), r == unicode.ReplacementChar:
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// together are words that belong to their number, or to each other: 8 x 2-2,
// 0.92 s, 126 BPM, (you left).
var together = regexp.MustCompile(`[0-9] (x [0-9p]|s\b|BPM\b|%)|\(you [a-z]+\)`)

const noBreak = "\u00a0"

// Words parts text where a line may end.
func Words(s string) []string {
	s = together.ReplaceAllStringFunc(OneLine(s), func(m string) string { return strings.ReplaceAll(m, " ", noBreak) })
	return strings.Split(s, " ")
}

// Wrap breaks text between words into lines of at most n columns; a word
// that is longer is broken anywhere. There is always one line.
func Wrap(s string, n int) []string {
	n = max(n, 2)
	var lines []string
	line := ""
	for _, word := range Words(s) {
		for Columns(word) > n {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			head := fitting(word, n)
			lines, word = append(lines, head), word[len(head):]
		}
		switch {
		case line == "":
			line = word
		case Columns(line)+1+Columns(word) <= n:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], noBreak, " ")
	}
	return lines
}

// fitting is the longest beginning of s that takes at most n columns, at
// least one rune.
func fitting(s string, n int) string {
	used := 0
	for i, r := range s {
		used += runeColumns(r)
		if used > n && i > 0 {
			return s[:i]
		}
	}
	return s
}

// Clip shortens a string to n columns, taking from the middle: the ends of
// file names tell more.
func Clip(s string, n int) string {
	if Columns(s) <= n {
		return s
	}
	runes := []rune(s)
	from, to := len(runes)/2, len(runes)/2
	for used := Columns(s) + 1; used > n && (from > 0 || to < len(runes)); {
		if from >= len(runes)-to && from > 0 {
			from--
			used -= runeColumns(runes[from])
		} else {
			used -= runeColumns(runes[to])
			to++
		}
	}
	return string(runes[:from]) + "…" + string(runes[to:])
}
