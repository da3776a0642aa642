package library

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/disk"
)

// Cache keeps analyses in the user's cache folder, under the content of the
// music and not its name: a file that was moved or renamed is still known, one
// that was changed is not. The folder may be deleted at any time. Nothing that
// goes wrong with it is an error; the music is then analysed again.
type Cache struct {
	dir     string // empty: nothing is kept
	version string // of the analyser
}

// Remembered is what the cache keeps of one file: nothing that depends on its
// name or place.
type Remembered struct {
	Track beat.Track `json:"track"`
	Notes []string   `json:"notes"` // what the decoder had to say
}

// OpenCache finds the user's cache folder. Where there is none (neither HOME
// nor XDG_CACHE_HOME set), nothing is kept.
func OpenCache() *Cache {
	dir, err := os.UserCacheDir()
	if err != nil {
		return &Cache{}
	}
	return &Cache{dir: filepath.Join(dir, "onphrase", "analysis"), version: beat.Version}
}

// Key is the SHA-256 of all that decides the answer.
func (c *Cache) Key(path string, mode decode.Mode) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	fmt.Fprintf(h, "onphrase analysis\x00%s\x00%s\x00", c.version, mode)
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

func (c *Cache) path(key string) string { return filepath.Join(c.dir, key[:2], key) }

// Get finds an earlier analysis. A file that is damaged, cut short or not ours
// counts as none.
func (c *Cache) Get(key string) (Remembered, bool) {
	var r Remembered
	if c.dir == "" {
		return r, false
	}
	src, err := os.ReadFile(c.path(key))
	if err != nil {
		return r, false
	}
	sum, body, ok := bytes.Cut(src, []byte("\n"))
	if !ok || string(sum) != seal(key, body) {
		return r, false
	}
	return r, json.Unmarshal(body, &r) == nil
}

// put keeps an analysis, whole or not at all.
func (c *Cache) put(key string, r Remembered) {
	if c.dir == "" {
		return
	}
	body, err := json.Marshal(r)
	if err != nil {
		return
	}
	dst := c.path(key)
	if os.MkdirAll(filepath.Dir(dst), 0o755) != nil {
		return
	}
	// An error leaves the cache as it was; the music will be analysed again.
	_ = disk.WriteWhole(dst, append([]byte(seal(key, body)+"\n"), body...))
}

// seal binds a body to its key, so that no damage and no mix-up goes unseen.
func seal(key string, body []byte) string {
	return fmt.Sprintf("%x", sha256.Sum256(append([]byte(key+"\n"), body...)))
}
