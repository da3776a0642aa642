package export

import (
	"fmt"
	"io"
	"strings"

	"onphrase/align"
)

// writeSRT writes the captions of writeWebVTT for players that know no WebVTT.
//
// The format has no standard. Common practice, no source: a number, a line of
// times with a comma before the milliseconds, the text, an empty line, UTF-8.
func writeSRT(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	for i, c := range captions(m) {
		fmt.Fprintf(&b, "%d\n%s --> %s\n", i+1, stamp(c.from, ','), stamp(c.to, ','))
		for _, l := range c.lines {
			b.WriteString(srtText.Replace(l) + "\n")
		}
		b.WriteString("\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// srtText replaces the signs that players take for tags, because the format has
// no way to write them, and those of playerText.
var srtText = strings.NewReplacer("<", "‹", ">", "›", "{", "(", "}", ")", `\`, "/")
