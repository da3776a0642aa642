package main

import (
	"os"
	"path/filepath"

	"onphrase/cmd/internal/disk"
)

// musicSources are files of music and what corrects them: beside each, or in
// the user's own folder.
func musicSources(files []string) disk.Sources {
	var all disk.Sources
	for _, file := range files {
		all = append(all, file, file+correctionEnding)
	}
	own := correctionFolder()
	if kept, err := os.ReadDir(own); own != "" && err == nil {
		for _, entry := range kept {
			all = append(all, filepath.Join(own, entry.Name()))
		}
	}
	return all
}

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
	return musicSources(files)
}
