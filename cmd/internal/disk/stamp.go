package disk

import (
	"fmt"
	"os"
	"strings"
)

// Stamp is another text whenever one of the files or folders comes, goes,
// changes or is written anew.
func Stamp(paths []string) string {
	var b strings.Builder
	for _, p := range paths {
		if info, err := os.Stat(p); err == nil {
			fmt.Fprintf(&b, "%d %d", info.ModTime().UnixNano(), info.Size())
		}
		b.WriteString(" " + p + "\n")
	}
	return b.String()
}
