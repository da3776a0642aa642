package main

import (
	"path/filepath"

	"onphrase/align"
	"onphrase/cmd/internal/aligned"
)

// linkFrom turns the tracks' paths into those from the folder of the file to
// write, so that the folder and its music can be moved together. What goes to
// standard output is taken to be kept in the folder we are in.
func linkFrom(m *align.CountMap, out string) {
	folder := "."
	if out != "-" {
		folder = filepath.Dir(out)
	}
	if abs, err := filepath.Abs(folder); err == nil {
		folder = abs
	}
	aligned.EachTrack(m, func(t *align.Music) {
		if t.Path == "" {
			return
		}
		path, err := filepath.Abs(t.Path)
		if err != nil {
			path = t.Path
		}
		if near, err := filepath.Rel(folder, path); err == nil {
			path = near
		}
		t.Path = filepath.ToSlash(path)
	})
}
