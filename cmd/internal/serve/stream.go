package serve

import (
	"io"
	"net/http"
	"time"
)

// heartbeat is how often a page that listens hears that the server is there.
const heartbeat = 15 * time.Second

// retry tells a page to come back after a second when the stream breaks off.
const retry = "retry: 1000\n"

// event is one event as it is sent.
func event(kind, data string) string { return "event: " + kind + "\ndata: " + data + "\n\n" }

// stream tells a page what happens, until either side leaves: first, if it is
// not empty, and then the text of everything that comes.
//
// Ref: WHATWG HTML, 9.2 Server-sent events.
func stream[E any](w http.ResponseWriter, r *http.Request, first string, events <-chan E, text func(E) string) {
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	out := http.NewResponseController(w)
	send := func(text string) bool {
		_, err := io.WriteString(w, text)
		return err == nil && out.Flush() == nil
	}
	if first != "" && !send(first) {
		return
	}
	beat := time.NewTicker(heartbeat)
	defer beat.Stop()
	for {
		next := ": here\n\n"
		select {
		case <-r.Context().Done():
			return
		case e := <-events:
			next = text(e)
		case <-beat.C:
		}
		if !send(next) {
			return
		}
	}
}
