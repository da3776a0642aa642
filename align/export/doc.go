// Package export writes a count map in forms that people teach from and
// programs read: text, CSV, JSON, Markdown, a page, a cue sheet, running orders
// for players, and files that go along with sound: captions, chapters, lyrics,
// a tempo map.
//
// The latter are on the timeline of the class, or after OnTrack on that of one
// of its songs as recorded.
//
// Each form is an entry of Formats. A writer gets a finished map and a
// stream; it knows no files, no terminal and no environment.
package export
