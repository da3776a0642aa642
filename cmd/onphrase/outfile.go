package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// writeFile writes a file of the user's whole or not at all. A file that is
// there already is hers: it is replaced only when she says so.
func writeFile(path string, force bool, content []byte) error {
	// Through a link, the file it points to is meant.
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return failed("", "%s: %s", path, reason(err))
	case info.IsDir():
		return failed("name a file in it", "%s is a folder", path)
	case !info.Mode().IsRegular(): // a device or a pipe has nothing to lose
		return wrote(path, os.WriteFile(path, content, filePerm))
	case !force:
		old, err := os.ReadFile(path)
		if err == nil && bytes.Equal(old, content) {
			return nil
		}
		return failed("choose another name, or replace it with --force", "%s exists already and is left as it is", path)
	}
	return wrote(path, writeWhole(path, content))
}

func wrote(path string, err error) error {
	if err != nil {
		return failed("", "cannot write %s: %s", path, reason(err))
	}
	return nil
}
