package plan

import (
	"strings"
	"unicode"
)

// nameKey is a move's name without what people write differently: case,
// spaces, hyphens and simple plurals.
func nameKey(name string) string { return strings.Join(nameWords(name), "") }

// nameWords are the words of a move's name, in lower case and singular.
func nameWords(name string) []string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsNumber(r) && !unicode.IsMark(r)
	})
	for i, w := range words {
		words[i] = singular(w)
	}
	return words
}

// singular takes a simple English plural back: lunges, presses, crunches,
// flies. Words in -ss stay.
func singular(w string) string {
	switch {
	case strings.HasSuffix(w, "ies"):
		return strings.TrimSuffix(w, "ies") + "y"
	case strings.HasSuffix(w, "sses"), strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "shes"),
		strings.HasSuffix(w, "xes"):
		return strings.TrimSuffix(w, "es")
	case strings.HasSuffix(w, "ss"):
		return w
	}
	return strings.TrimSuffix(w, "s")
}
