package desk

import (
	"path"
	"strconv"
	"strings"
)

// An id stands for a path that this program has named. Whatever else comes
// from a browser leads nowhere.

// slashes is a path of whatever system with / between folders; baseName is the
// name at its end.
func slashes(p string) string  { return strings.ReplaceAll(p, `\`, "/") }
func baseName(p string) string { return path.Base(slashes(p)) }

// id is the id of a path, the same for as long as the program runs.
func (d *Desk) id(path string) string {
	if id, ok := d.ids[path]; ok {
		return id
	}
	d.names = append(d.names, path)
	id := strconv.Itoa(len(d.names))
	d.ids[path] = id
	return id
}

// path is what an id stands for.
func (d *Desk) path(id string) (string, error) {
	n, err := strconv.Atoi(id)
	if err != nil || n < 1 || n > len(d.names) {
		return "", refuse("Load the page again.", "This is no longer known here.")
	}
	return d.names[n-1], nil
}

// SongFile is the path of a song whose sound a page may play; a song without a
// file has none.
func (d *Desk) SongFile(id string) (path string, ok bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	path, err := d.path(id)
	if err != nil {
		return "", false
	}
	s := d.songAt(path)
	return path, s != nil && !s.tapped()
}
