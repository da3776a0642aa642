package plan

import (
	"os"
	"regexp"
	"testing"
)

// What a hint offers must be a word of the class file, so one of its manual.
func TestHintsOfferKnownWords(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	known := func(word string) bool { return regexp.MustCompile(`[ \t]` + word + `[ ,;:(]`).Match(doc) }
	for typed, words := range otherWords {
		if typed != fold(typed) {
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
