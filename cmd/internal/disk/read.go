package disk

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// OwnFile is the path of a file of the user's: the one that she names, else
// that of the usual name in her configuration folder; empty where she has none.
func OwnFile(named, usual string) string {
	if named != "" {
		return named
	}
	dir, err := os.UserConfigDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "onphrase", usual)
}

// ReadLimited reads a file of at most limit bytes. A longer one is an error.
func ReadLimited(path string, limit int64) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err == nil && int64(len(src)) > limit {
		err = fmt.Errorf("larger than %d MB", limit>>20)
	}
	return src, err
}
