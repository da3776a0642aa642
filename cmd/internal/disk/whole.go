// Package disk reads and writes files of the user: whole or not at all, never
// over what she has not named, and never over what is read for it.
package disk

import (
	"crypto/rand"
	"os"
	"path/filepath"
)

// FilePerm is the mode of new files, before the user's umask.
const FilePerm = 0o644

// WriteWhole writes a file whole or not at all: beside its place first, and
// then moved there. A file that is replaced keeps its mode.
func WriteWhole(path string, content []byte) error {
	mode := os.FileMode(FilePerm)
	old, err := os.Stat(path)
	if err == nil {
		mode = old.Mode().Perm()
	}
	tmp := filepath.Join(filepath.Dir(path), ".onphrase-"+rand.Text())
	f, err := os.OpenFile(tmp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	_, err = f.Write(content)
	if err == nil {
		err = f.Sync()
	}
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err == nil && old != nil {
		err = os.Chmod(tmp, mode) // whatever the umask took
	}
	if err == nil {
		err = os.Rename(tmp, path)
	}
	if err != nil {
		os.Remove(tmp)
	}
	return err
}
