package serve

import (
	"bytes"
	"net/http"
	"time"

	"onphrase/align/export"
	"onphrase/cmd/internal/desk"
)

// ClassPage is the page of the class that is open: stage and wall.
type ClassPage struct{ Desk *desk.Desk }

// ServeHTTP answers with the page as the class stands now.
func (p ClassPage) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	m, _ := p.Desk.Map()
	if r.URL.Path != "/page" || m == nil {
		http.NotFound(w, r)
		return
	}
	var b bytes.Buffer
	if err := export.LivePage(&b, m); err != nil {
		http.Error(w, "the page cannot be made", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(b.Bytes()))
}
