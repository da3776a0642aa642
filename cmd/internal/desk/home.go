package desk

import (
	"context"
	"time"

	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/plan"
)

// Home is where her songs and classes are kept. Paths are Home's own; a browser
// never sees one, only ids that stand for them.
type Home interface {
	// Root is the folder at which looking round begins.
	Root() string
	// Look lists a folder: folders, classes and music, in natural order.
	Look(folder string) (Place, error)
	// Songs lists the songs below a folder, by path, in natural order, tapped
	// ones too.
	Songs(folder string) ([]string, error)
	// Known is what is known of a song without listening to it; heard is false
	// when it has to be.
	Known(path string) (h Heard, heard bool, err error)
	// Hear listens to a song.
	Hear(ctx context.Context, path string) (Heard, error)
	// Keep replaces the corrections of a song, if they still are those of before.
	Keep(path string, before, after []correct.Correction) error
	// KeepTapped writes a tapped song into a folder, under a name of its own, and
	// gives its path.
	KeepTapped(folder, title string, file []byte) (path string, err error)
	// Size is the length of a song in bytes: what is left to hear is reckoned by it.
	Size(path string) int64
	// Recent lists what was open last, the latest first; Opened adds to it.
	Recent() []Recent
	Opened(Recent)
	// ReadClass is the file of a class, ReplaceClass puts another in its place, if
	// it still is what it was.
	ReadClass(path string) ([]byte, error)
	ReplaceClass(path string, before, after []byte) error
	// SafetyCopy keeps a class as it was before the desk changed it. History and
	// KeepHistory are what was done to it, kept beside it.
	SafetyCopy(path string, src []byte) error
	History(path string) ([]byte, error)
	KeepHistory(path string, kept []byte) error
	// MusicFolder is where a class's songs are; FindMusic gives the path of each
	// by its name in the class, and says what is missing.
	MusicFolder(path string, c *plan.Class) string
	FindMusic(path string, c *plan.Class) (files map[string]string, missing []plan.Problem)
	// Catalog is the moves that are known, hers too.
	Catalog() *plan.Catalog
	// NewClass writes a class into a folder, under a name of its own.
	NewClass(folder, name string, src []byte) (path string, err error)
	// Demo writes the demo, where it is not there yet, and gives its class.
	Demo() (path string, err error)
	// Classes lists the classes round a folder of songs, with the songs they name.
	Classes(folder string) []ClassFile
}

// Heard is a song as it was heard, and what she has set of it.
type Heard struct {
	Track beat.Track
	Fixes []correct.Correction
}

// corrected is the track as she has put it right.
func (h Heard) corrected() beat.Track {
	t, err := correct.Apply(h.Track, h.Fixes)
	if err != nil {
		return h.Track
	}
	return t
}

// Place is a folder as it is looked at.
type Place struct {
	Name    string
	Up      string // the folder above, empty at the top
	Entries []Entry
}

// Entry is one thing in a folder.
type Entry struct {
	Path string
	Name string
	Kind EntryKind
}

// EntryKind says what an entry is. Nothing else is listed.
type EntryKind string

const (
	Folder EntryKind = "folder"
	Class  EntryKind = "class"
	Music  EntryKind = "music"
)

// Recent is something that was open.
type Recent struct {
	Path  string
	Kind  EntryKind // Folder or Class
	Name  string
	Where string // its folder, in words
	When  time.Time
}

// ClassFile is one of her classes.
type ClassFile struct {
	Path  string
	Name  string
	When  time.Time
	Songs []string // paths
}
