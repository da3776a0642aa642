// Package export writes a count map in forms that people teach from and
// programs read: text, CSV, JSON, Markdown.
//
// Each form is an entry of Formats. A writer gets a finished map and a
// stream; it knows no files, no terminal and no environment.
package export
