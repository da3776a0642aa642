package main

import (
	"os"

	"onphrase/beat/learn"
)

// readItems reads a list of tracks that plan wrote.
func readItems(file string) ([]learn.Item, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	return learn.ParseItems(string(text))
}
