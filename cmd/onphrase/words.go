package main

import (
	"fmt"
	"math"
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// clock writes seconds as m:ss or h:mm:ss, as a studio clock shows them.
func clock(seconds float64) string {
	s := int(math.Round(seconds))
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// moment writes seconds as m:ss.t, near enough to find a count by.
func moment(seconds float64) string {
	t := int(math.Round(seconds * 10))
	return fmt.Sprintf("%d:%02d.%d", t/600, t/10%60, t%10)
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// columns is the width of text on a terminal: wide letters take two columns,
// marks that sit on a letter none.
//
// Ref: Unicode Standard Annex 11, East Asian Width.
func columns(text string) int {
	n := 0
	for _, r := range text {
		n += runeColumns(r)
	}
	return n
}

func runeColumns(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// clip shortens text to a number of columns, taking from the middle: the ends
// of file names tell more.
func clip(text string, most int) string {
	if columns(text) <= most {
		return text
	}
	runes := []rune(text)
	from, to := len(runes)/2, len(runes)/2
	for used := columns(text) + 1; used > most && (from > 0 || to < len(runes)); {
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

// wrap breaks text into lines of at most so many columns, after spaces and
// hyphens where it can.
func wrap(text string, most int) []string {
	var lines []string
	rest := []rune(text)
	for len(rest) > 0 {
		used, cut, end := 0, 0, 0
		for end < len(rest) && used+runeColumns(rest[end]) <= most {
			used += runeColumns(rest[end])
			end++
			if c := rest[end-1]; c == ' ' || c == '-' || c == '_' || c == '/' {
				cut = end
			}
		}
		switch {
		case end == len(rest):
			cut = end
		case rest[end] == ' ': // the line ends where a word does
			cut = end
		case cut == 0:
			cut = max(end, 1)
		}
		lines = append(lines, strings.TrimRight(string(rest[:cut]), " "))
		rest = []rune(strings.TrimLeft(string(rest[cut:]), " "))
	}
	if lines == nil {
		return []string{""}
	}
	return lines
}

// pad fills text with spaces to a width; right puts them before it.
func pad(text string, to int, right bool) string {
	fill := strings.Repeat(" ", max(0, to-columns(text)))
	if right {
		return fill + text
	}
	return text + fill
}
