package main

import (
	"strings"

	"onphrase/plan/say"
)

// wrap breaks the text of a table's cell into lines of at most so many columns:
// after spaces, as say.Wrap does, and where a cell is narrow also after what
// joins the words of a file's name.
func wrap(text string, most int) []string {
	var lines []string
	rest := []rune(text)
	for len(rest) > 0 {
		used, cut, end := 0, 0, 0
		for end < len(rest) && used+say.Columns(string(rest[end])) <= most {
			used += say.Columns(string(rest[end]))
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
