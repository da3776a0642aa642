package main

import (
	"path/filepath"
	"strings"

	"onphrase/beat/decode"
)

// titleOf reads the title in a file's tags, else takes it from its name.
func titleOf(path string) string {
	if tags, err := decode.ReadTags(path); err == nil && tags.Title != "" {
		return tags.Title
	}
	return strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
}
