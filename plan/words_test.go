package plan

import (
	"strings"
	"testing"

	"onphrase/plan/say"
)

// What a hint offers must be a word of the class file, a key or one of the
// words that a key may have.
func TestHintsOfferKnownWords(t *testing.T) {
	known := func(word string) bool { return strings.Contains(ClassSchema, `"`+word+`"`) }
	for typed, words := range otherWords {
		if typed != say.Fold(typed) {
			t.Errorf("%q is not folded", typed)
		}
		for _, w := range words {
			if !known(w) {
				t.Errorf("%s: no word %s in the class file", typed, w)
			}
		}
	}
	for word := range elsewhere {
		if !known(word) {
			t.Errorf("no key %s in the class file", word)
		}
	}
}
