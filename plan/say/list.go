package say

import "strings"

// And joins words: "a, b and c".
func And[T ~string](words []T) string { return list(words, " and ") }

// Or joins words: "a, b or c".
func Or[T ~string](words []T) string { return list(words, " or ") }

func list[T ~string](words []T, last string) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i > 0 && i == len(words)-1:
			b.WriteString(last)
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(string(w))
	}
	return b.String()
}

// Ways joins ways out that may have commas of their own: "a; b; or c".
func Ways(ways []string) string {
	if len(ways) < 2 {
		return strings.Join(ways, "")
	}
	last := len(ways) - 1
	return strings.Join(ways[:last], "; ") + "; or " + ways[last]
}
