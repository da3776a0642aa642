// Package aligned holds a class aligned to its music together with the files
// that both came from.
package aligned

import (
	"onphrase/align"
	"onphrase/beat"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/plan"
)

// MostBytes is the largest file read of a class, of moves or of prices [bytes].
const MostBytes = 4 << 20

// Class is a class aligned to its music, with the files it came from.
type Class struct {
	Path   string // of the class file
	Src    []byte // what is, or would be, in it
	Class  *plan.Class
	Files  Files
	Tracks map[string]beat.Track // by the name in the class file
	Map    *align.CountMap
}

// Sources are the music of a class and what corrects it.
func (c *Class) Sources() disk.Sources {
	var files []string
	for _, name := range TrackNames(c.Class) {
		files = append(files, c.Files[name])
	}
	return library.SourcesOf(files)
}
