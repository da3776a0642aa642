package disk

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"onphrase/cmd/internal/told"
)

// WriteFile writes a file of the user's whole or not at all. A file that is
// there already is hers: it is replaced only when she says so, and never when
// it is one of those that the command reads.
func WriteFile(path string, force bool, read Sources, content []byte) error {
	named := path
	// Through a link, the file it points to is meant.
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return writeNew(path, content)
	case err != nil:
		return told.Failed("", "%s: %s", path, told.Reason(err))
	case info.IsDir():
		return told.Failed("name a file in it", "%s is a folder", path)
	case !info.Mode().IsRegular(): // a device or a pipe has nothing to lose
		return Wrote(path, os.WriteFile(path, content, FilePerm))
	}
	if source, ok := read.same(info); ok {
		return spared(named, source)
	}
	if !force {
		old, err := os.ReadFile(path)
		if err == nil && bytes.Equal(old, content) {
			return nil
		}
		return told.Failed("choose another name, or replace it with --force", "%s exists already and is left as it is", path)
	}
	return Wrote(path, WriteWhole(path, content))
}

// writeNew writes a file that is not there yet.
func writeNew(path string, content []byte) error {
	folder := filepath.Dir(path)
	if _, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) {
		return told.Failed("make it first, or name a file elsewhere", "cannot write %s: there is no folder %s", path, folder)
	}
	return Wrote(path, WriteWhole(path, content))
}

// spared says that a source is not replaced.
func spared(named, source string) error {
	const hint = "choose another name; --force is for what an earlier run has written"
	if filepath.Clean(named) == filepath.Clean(source) {
		return told.Failed(hint, "%s is read for this and is never replaced", named)
	}
	return told.Failed(hint, "%s is the same file as %s, which is read for this and is never replaced", named, source)
}

// Wrote says of an error, if it is one, that a file could not be written.
func Wrote(path string, err error) error {
	if err != nil {
		return told.Failed("", "cannot write %s: %s", path, told.Reason(err))
	}
	return nil
}
