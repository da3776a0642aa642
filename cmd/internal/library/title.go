package library

import (
	"path/filepath"
	"strings"

	"onphrase/beat/decode"
)

// TitleOf reads the title in a file's tags, else takes it from its name.
func TitleOf(path string) string {
	if tags, err := decode.ReadTags(path); err == nil && tags.Title != "" {
		return tags.Title
	}
	return strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
}
