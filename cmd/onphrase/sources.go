package main

import (
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
)

// sources are the files that a class is made of.
func (c *classFlags) sources(l *laid) disk.Sources {
	return append(l.music(), l.path, movesFile(c.moves))
}

// music is the music of a class and what corrects it.
func (l *laid) music() disk.Sources {
	var files []string
	for _, name := range trackNames(l.class) {
		files = append(files, l.files[name])
	}
	return library.SourcesOf(files)
}
