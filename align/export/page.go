package export

import (
	"io"

	"onphrase/align"
	"onphrase/align/export/web"
)

func writePage(w io.Writer, m *align.CountMap) error { return web.Write(w, m, Cautions) }

// LivePage writes the page for a server that tells it when the class changes.
func LivePage(w io.Writer, m *align.CountMap) error { return web.WriteLive(w, m, Cautions) }
