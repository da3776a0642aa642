package disk

import (
	"io"
	"os"
	"path/filepath"
)

// WriteExclusive writes a file that is not there yet, whole or not at all.
func WriteExclusive(path string, content io.Reader) error {
	tmp, err := os.CreateTemp(filepath.Dir(path), ".onphrase-*")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name())
	_, err = io.Copy(tmp, content)
	if err == nil {
		err = tmp.Sync()
	}
	if closeErr := tmp.Close(); err == nil {
		err = closeErr
	}
	if err == nil {
		err = os.Chmod(tmp.Name(), FilePerm)
	}
	if err == nil {
		err = os.Link(tmp.Name(), path) // fails where something is there already
	}
	return err
}
