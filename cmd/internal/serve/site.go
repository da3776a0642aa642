package serve

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"path"
	"sync"
	"time"

	"onphrase/align"
	"onphrase/align/export"
	"onphrase/cmd/internal/aligned"
)

// Site is the page of a class as it stands now, and the music it plays. What
// can be asked for is a list: no address is ever turned into a path.
type Site struct {
	mu        sync.Mutex
	page      []byte
	edition   string            // of the page, changes with it
	music     map[string]served // by address
	listeners map[chan string]bool
}

// served is a track as it was when the page was written.
type served struct {
	path string
	info fs.FileInfo
}

// The addresses of a site; music has others.
const (
	pageAddress   = "/"
	eventsAddress = "/events"
)

// mostListeners is how many pages may listen for changes at once.
const mostListeners = 64

// Show puts a class on the site and tells the pages that are open.
func (v *Site) Show(l *aligned.Class) error {
	music := map[string]served{}
	at := map[string]string{}
	for n, name := range aligned.TrackNames(l.Class) {
		file := l.Files[name]
		info, err := os.Stat(file)
		if err != nil || !info.Mode().IsRegular() || l.Tracks[name].Problem != "" {
			continue // nothing that was heard
		}
		at[name] = fmt.Sprintf("music/%d/%s", n+1, path.Base(name))
		music["/"+at[name]] = served{file, info}
	}
	aligned.EachTrack(l.Map, func(t *align.Music) { t.Path = at[t.File] })
	var b bytes.Buffer
	if err := export.LivePage(&b, l.Map); err != nil {
		return err
	}
	sum := sha256.Sum256(b.Bytes())
	v.mu.Lock()
	defer v.mu.Unlock()
	v.page, v.music, v.edition = b.Bytes(), music, hex.EncodeToString(sum[:8])
	for c := range v.listeners {
		select {
		case c <- v.edition:
		default: // it has not yet read the one before; it will find this one
			select {
			case <-c:
			default:
			}
			c <- v.edition
		}
	}
	return nil
}

// ServeHTTP answers for the page, its events and its music.
func (v *Site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	v.mu.Lock()
	page, music := v.page, v.music
	v.mu.Unlock()
	switch r.URL.Path {
	case pageAddress:
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Header().Set("Cache-Control", "no-store")
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(page))
	case eventsAddress:
		v.events(w, r)
	default:
		track, ok := music[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		track.serve(w, r)
	}
}

// serve plays a track, if its file still is what it was: another file, or a
// link, that took its place is not the class's.
func (t served) serve(w http.ResponseWriter, r *http.Request) {
	f, err := os.Open(t.path)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !os.SameFile(info, t.info) || info.Size() != t.info.Size() ||
		!info.ModTime().Equal(t.info.ModTime()) {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Cache-Control", "no-cache")
	http.ServeContent(w, r, path.Base(r.URL.Path), info.ModTime(), f)
}

// events tells a page the edition of the page, now and at every change, until
// either side leaves.
func (v *Site) events(w http.ResponseWriter, r *http.Request) {
	c := make(chan string, 1)
	v.mu.Lock()
	if v.listeners == nil {
		v.listeners = map[chan string]bool{}
	}
	full := len(v.listeners) >= mostListeners
	if !full {
		v.listeners[c] = true
		c <- v.edition
	}
	v.mu.Unlock()
	if full {
		http.Error(w, "too many pages are open", http.StatusServiceUnavailable)
		return
	}
	defer func() {
		v.mu.Lock()
		delete(v.listeners, c)
		v.mu.Unlock()
	}()
	stream(w, r, "", c, func(edition string) string { return retry + event("page", edition) })
}
