package home

import (
	"os"
	"path/filepath"

	"onphrase/cmd/internal/disk"
)

// The endings of what is kept beside a class: a copy of it as it was before the
// desk changed it in this session, and what was done to it.
const (
	copyEnding    = ".before"
	historyEnding = ".history"
)

// beside is a hidden file beside a class.
func beside(class, ending string) string {
	return filepath.Join(filepath.Dir(class), "."+filepath.Base(class)+ending)
}

// SafetyCopy keeps a class as it was when the session began.
func (h *Home) SafetyCopy(path string, src []byte) error {
	return disk.WriteWhole(beside(path, copyEnding), src)
}

// History is what was done to a class in earlier sessions.
func (h *Home) History(path string) ([]byte, error) {
	return os.ReadFile(beside(path, historyEnding))
}

// KeepHistory keeps it.
func (h *Home) KeepHistory(path string, kept []byte) error {
	return disk.WriteWhole(beside(path, historyEnding), kept)
}
