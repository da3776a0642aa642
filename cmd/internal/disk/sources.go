package disk

import "os"

// Sources are the files that a command reads. Nothing that it writes takes the
// place of one of them.
type Sources []string

// same is the source that a file is, by whatever name or link it was reached.
func (s Sources) same(info os.FileInfo) (path string, ok bool) {
	for _, path := range s {
		if source, err := os.Stat(path); err == nil && os.SameFile(info, source) {
			return path, true
		}
	}
	return "", false
}
