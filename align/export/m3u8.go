package export

import (
	"fmt"
	"io"
	"math"
	"path"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// writeM3U8 writes the running order as players read it.
//
// Common practice, no source for playlists of files: #EXTM3U, and before every
// path #EXTINF with seconds (-1 unknown) and title. The same two lines are
// defined in RFC 8216, section 4.3, which also asks for UTF-8 without a mark.
func writeM3U8(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	b.WriteString("#EXTM3U\n")
	if name := say.OneLine(m.Class); name != "" {
		fmt.Fprintf(&b, "#PLAYLIST:%s\n", name)
	}
	for _, t := range runningOrder(m) {
		seconds := -1
		if t.Duration > 0 {
			seconds = int(math.Round(t.Duration))
		}
		fmt.Fprintf(&b, "# %s\n#EXTINF:%d,%s\n%s\n", t.note, seconds, t.name(), m3uPath(t.location()))
	}
	for _, c := range Cautions {
		fmt.Fprintf(&b, "# %s\n", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// m3uPath is a path as a line of its own: not a comment, not an address, with
// no blank at its ends. A line break, which no line can hold, is written as
// browsers write it.
func m3uPath(p string) string {
	p = strings.NewReplacer("\n", "%0A", "\r", "%0D").Replace(p)
	if path.IsAbs(p) {
		return p
	}
	if p == "" || strings.ContainsRune("# \t", rune(p[0])) || strings.Contains(p, ":") {
		return "./" + p
	}
	return p
}
