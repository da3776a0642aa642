package disk

import (
	"os"
	"path/filepath"
	"testing"
)

func TestWriteWhole(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "map.csv")
	if err := WriteWhole(path, []byte("one")); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(path, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := WriteWhole(path, []byte("two")); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(path)
	if err != nil || string(got) != "two" {
		t.Errorf("read %q, %v; want two", got, err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v; want that of the file that was replaced", info.Mode(), err)
	}
	// A place that cannot be written to: an error, and nothing left behind.
	folder := filepath.Join(dir, "folder")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := WriteWhole(folder, []byte("three")); err == nil {
		t.Error("a folder was replaced")
	}
	if names, _ := filepath.Glob(filepath.Join(dir, ".*")); len(names) > 0 {
		t.Errorf("left behind: %v", names)
	}
}
