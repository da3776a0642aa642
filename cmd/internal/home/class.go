package home

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/demo"
	"onphrase/cmd/internal/desk"
	"onphrase/cmd/internal/disk"
	"onphrase/plan"
)

// ReadClass is the file of a class.
func (h *Home) ReadClass(path string) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s: %w", path, fs.ErrInvalid)
	}
	return disk.ReadLimited(path, aligned.MostBytes)
}

// ReplaceClass writes a class file whole, if it still is what it was.
func (h *Home) ReplaceClass(path string, before, after []byte) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	now, err := h.ReadClass(path)
	if err != nil {
		return err
	}
	if !bytes.Equal(now, before) {
		return &desk.Refusal{Say: "The class was changed elsewhere meanwhile.",
			Hint: "What is there now is shown; do it once more."}
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // through a link, the file it points to is meant
	}
	return disk.WriteWhole(path, after)
}

// MusicFolder is where a class's songs are.
func (h *Home) MusicFolder(path string, c *plan.Class) string {
	return aligned.MusicFolder(path, c)
}

// FindMusic finds a class's songs.
func (h *Home) FindMusic(path string, c *plan.Class) (map[string]string, []plan.Problem) {
	files, missing := aligned.FindMusic(aligned.MusicFolder(path, c), c)
	return files, missing
}

// Catalog is the moves that are known, hers too. A file of hers that cannot be
// read is said once, and left out.
func (h *Home) Catalog() *plan.Catalog {
	h.known.Do(func() {
		h.moves = plan.Builtin()
		if own, err := h.parts.Moves(); err == nil {
			h.moves = own
		}
	})
	return h.moves
}

// Demo writes the demo into her home folder, where it is not there yet.
func (h *Home) Demo() (string, error) {
	dir := filepath.Join(h.Root(), demo.Dir)
	class := filepath.Join(dir, demo.ClassName)
	if _, err := os.Stat(class); err == nil {
		return class, nil // hers by now: she may have changed it
	}
	if _, err := demo.Write(dir); err != nil {
		return "", &desk.Refusal{Say: "The demo could not be written into " + dir + "."}
	}
	return class, nil
}
