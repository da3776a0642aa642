package web

import (
	"io"
	"slices"

	"onphrase/align"
)

// liveScript is that of a page that is served.
var liveScript = joined(append(slices.Clone(scripts), "live.js"))

// WriteLive writes the page for a server: it listens for the server's events
// beside it, at "events", and loads itself again when the page has changed.
func WriteLive(w io.Writer, m *align.CountMap, cautions []string) error {
	return write(w, m, cautions, liveScript, policy(liveScript)+"; connect-src 'self'")
}
