package main

import (
	"os"
	"path/filepath"
)

// sources are the files that a command reads. Nothing that it writes takes the
// place of one of them.
type sources []string

// same is the source that a file is, by whatever name or link it was reached.
func (s sources) same(info os.FileInfo) (path string, ok bool) {
	for _, path := range s {
		if source, err := os.Stat(path); err == nil && os.SameFile(info, source) {
			return path, true
		}
	}
	return "", false
}

// musicSources are files of music and what corrects them: beside each, or in
// the user's own folder.
func musicSources(files []string) sources {
	var all sources
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
func (c *classFlags) sources(l *laid) sources {
	return append(l.music(), l.path, movesFile(c.moves))
}

// music is the music of a class and what corrects it.
func (l *laid) music() sources {
	var files []string
	for _, name := range trackNames(l.class) {
		files = append(files, l.files[name])
	}
	return musicSources(files)
}

// ownFile is the path of a file of the user's: the one that she names, else
// that of the usual name in her configuration folder; empty where she has none.
func ownFile(named, usual string) string {
	if named != "" {
		return named
	}
	dir, err := os.UserConfigDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "onphrase", usual)
}
