package disk

import (
	"strings"

	"golang.org/x/text/unicode/norm"
)

// Folded is what a name is to a system that tells neither case nor the forms of
// Unicode.
func Folded(name string) string { return strings.ToLower(norm.NFC.String(name)) }
