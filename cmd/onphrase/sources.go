package main

import (
	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
)

// sources are the files that a class is made of.
func (c *classFlags) sources(l *aligned.Class) disk.Sources {
	return append(l.Sources(), l.Path, movesFile(c.moves))
}
