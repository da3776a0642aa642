package main

import (
	"strings"

	"onphrase/beat/learn"
)

// heldOut reports whether a groove ("casio:Dance1End") or file
// ("simutrans-data/10-Easy-driving") belongs to the test corpus.
func heldOut(kind, name string) bool {
	for _, h := range learn.HeldOut() {
		if h.Kind != kind {
			continue
		}
		if name == h.Name || kind == "groove" && strings.HasPrefix(strings.ToLower(name), strings.ToLower(h.Name)) {
			return true
		}
	}
	return false
}
