// Package screens holds the desk's screens: one document, its style, and ES
// modules that are served as they are. They keep no model; engine.js is the
// only one that knows how a request travels.
package screens

import (
	"embed"
	"html/template"
	"io"
	"io/fs"
)

//go:embed desk.html css js
var files embed.FS

var document = template.Must(template.ParseFS(files, "desk.html"))

// WriteDocument writes the document, with the token by which its requests are
// known.
func WriteDocument(w io.Writer, token string) error {
	return document.Execute(w, struct{ Token string }{token})
}

// Files are styles and modules, as css/NAME and js/NAME.
func Files() fs.FS { return files }
