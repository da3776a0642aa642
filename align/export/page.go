package export

import (
	"io"

	"onphrase/align"
	"onphrase/align/export/web"
)

func writePage(w io.Writer, m *align.CountMap) error { return web.Write(w, m, Cautions) }
