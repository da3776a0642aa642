// Package serve carries the desk and the page of a class over http, to browsers
// on this computer and, with a key, to devices near it.
package serve

import (
	"bytes"
	"context"
	"crypto/rand"
	"crypto/subtle"
	"io"
	"mime"
	"net/http"
	"net/url"
	"path"
	"strings"

	"onphrase/cmd/internal/desk"
	"onphrase/cmd/internal/desk/screens"
)

// Bounds of what a desk takes.
const (
	mostRequest = 256 << 10 // bytes of a request in JSON
	mostSong    = 1 << 30   // bytes of a song that was dropped
)

// tokenHeader carries the token of this start of the program: a page that was
// made by another start, or by somebody else, does not know it.
const tokenHeader = "X-Onphrase"

// Sounds gives the files behind songs, and takes dropped ones.
type Sounds interface {
	// Play serves the sound of a song.
	Play(w http.ResponseWriter, r *http.Request, path string)
	// Drop copies a song into a folder, and says so in plain words; nothing
	// there is replaced.
	Drop(ctx context.Context, folder, name string, song io.Reader) (say string, err error)
}

// Desk serves a desk to browsers on this computer.
type Desk struct {
	desk   *desk.Desk
	sounds Sounds
	base   func() []byte // the style that page and desk share
	page   http.Handler  // stage and wall of the open class
	token  string
	static http.Handler
}

// NewDesk serves a desk; base gives the style shared with the page of a class,
// page serves that.
func NewDesk(d *desk.Desk, sounds Sounds, base func() []byte, page http.Handler) *Desk {
	return &Desk{desk: d, sounds: sounds, base: base, page: page, token: rand.Text(),
		static: http.StripPrefix("/desk/", http.FileServerFS(screens.Files()))}
}

// deskPolicy lets the desk run its own modules, play songs and nothing else.
//
// Ref: W3C Content Security Policy Level 3.
const deskPolicy = "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src data:; " +
	"media-src 'self' blob:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// ServeHTTP answers for the desk. The gate before it has seen to it that the
// request is one of ours.
func (s *Desk) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	switch at := r.URL.Path; {
	case at == "/do":
		s.do(w, r)
	case at == "/drop":
		s.drop(w, r)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "there is nothing to change here", http.StatusMethodNotAllowed)
	case at == "/":
		s.document(w)
	case at == "/events":
		s.events(w, r)
	case at == "/desk/css/base.css":
		w.Header().Set("Content-Type", "text/css; charset=utf-8")
		w.Write(s.base()) // a browser that is gone needs none
	case strings.HasPrefix(at, "/desk/css/"), strings.HasPrefix(at, "/desk/js/"):
		w.Header().Set("Cache-Control", "no-cache")
		s.static.ServeHTTP(w, r)
	case strings.HasPrefix(at, "/music/"):
		s.music(w, r)
	default:
		s.page.ServeHTTP(w, r)
	}
}

func (s *Desk) document(w http.ResponseWriter) {
	var b bytes.Buffer
	if err := screens.WriteDocument(&b, s.token); err != nil {
		http.Error(w, "the desk cannot be shown", http.StatusInternalServerError)
		return
	}
	h := w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Set("Cache-Control", "no-store")
	h.Set("Content-Security-Policy", deskPolicy)
	w.Write(b.Bytes()) // a browser that is gone needs none
}

// ours tells whether a request that changes something comes from our own
// document: its exact origin, the token of this start, by POST.
//
// Ref: RFC 6454, 7 (Origin); W3C Fetch Metadata Request Headers.
func (s *Desk) ours(w http.ResponseWriter, r *http.Request) bool {
	origin, err := url.Parse(r.Header.Get("Origin"))
	token := r.Header.Get(tokenHeader)
	switch {
	case r.Method != http.MethodPost:
		w.Header().Set("Allow", "POST")
		http.Error(w, "by POST only", http.StatusMethodNotAllowed)
	case err != nil || origin.Scheme != "http" || !strings.EqualFold(origin.Host, r.Host):
		http.Error(w, "not for pages from elsewhere", http.StatusForbidden)
	case subtle.ConstantTimeCompare([]byte(token), []byte(s.token)) != 1:
		http.Error(w, "this page is from an earlier start of the program", http.StatusForbidden)
	default:
		return true
	}
	return false
}

// do answers a request in JSON.
func (s *Desk) do(w http.ResponseWriter, r *http.Request) {
	if !s.ours(w, r) {
		return
	}
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		http.Error(w, "application/json is expected", http.StatusUnsupportedMediaType)
		return
	}
	request, err := io.ReadAll(http.MaxBytesReader(w, r.Body, mostRequest))
	if err != nil {
		http.Error(w, "a request is shorter than that", http.StatusRequestEntityTooLarge)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Cache-Control", "no-store")
	w.Write(s.desk.Do(r.Context(), request)) // a browser that is gone needs none
}

// drop takes a song that was dropped on the page.
func (s *Desk) drop(w http.ResponseWriter, r *http.Request) {
	if !s.ours(w, r) {
		return
	}
	name := path.Base(strings.ReplaceAll(r.URL.Query().Get("name"), `\`, "/"))
	folder, err := s.desk.Folder()
	var say string
	if err == nil {
		say, err = s.sounds.Drop(r.Context(), folder, name, http.MaxBytesReader(w, r.Body, mostSong))
	}
	if err == nil {
		err = s.desk.Look()
	}
	w.Header().Set("Content-Type", "application/json")
	w.Write(desk.Told(say, err)) // a browser that is gone needs none
}

// music plays a song: /music/ID/NAME.
func (s *Desk) music(w http.ResponseWriter, r *http.Request) {
	id, _, _ := strings.Cut(strings.TrimPrefix(r.URL.Path, "/music/"), "/")
	file, ok := s.desk.SongFile(id)
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Cache-Control", "no-cache")
	s.sounds.Play(w, r, file)
}

// events tells a tab what happens, until either side leaves.
func (s *Desk) events(w http.ResponseWriter, r *http.Request) {
	events, stop := s.desk.Listen()
	defer stop()
	page := func() string { // the page of the class listens for another edition of itself
		_, edition := s.desk.Map()
		return event("page", edition)
	}
	stream(w, r, retry+page(), events, func(e desk.Event) string {
		text := event(e.Kind, string(e.Data))
		if e.Kind == "class" {
			text = page() + text
		}
		return text
	})
}
