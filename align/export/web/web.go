package web

import (
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"html/template"
	"io"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

//go:embed page
var files embed.FS

// The parts of the page's script and style, in the order in which they need
// each other.
var (
	scripts = []string{
		"data.js", "grid.js", "text.js", "fit.js", "player.js", "practise.js", "stage.js", "desk.js",
		"size.js", "keys.js", "start.js",
	}
	styles = []string{"base.css", "stage.css", "desk.css", "wall.css"}
)

var page = template.Must(template.New("page").ParseFS(files, "page/*.html"))

// BaseStyle is what the page shares with other screens of ours: type, colours,
// the look of what can be pressed.
func BaseStyle() []byte { return []byte(read(styles[:1])) }

// script is all of the page's own code; style is its look.
var (
	script = joined(scripts)
	style  = read(styles)
)

func joined(scripts []string) string {
	return "(function () {\n\"use strict\";\n" + read(scripts) + "})();\n"
}

// document is what the templates are given.
type document struct {
	Class    string
	Length   string
	Slot     string // empty when none was given
	Policy   string // for the content security policy
	Style    template.CSS
	Script   template.JS
	Data     stage
	Parts    []part
	Whole    []finding // about the class as such
	Count    string    // how many findings of which grade
	Totals   totals
	Summary  []summary
	Roomy    bool // the summary is on one sheet, in larger type
	Cautions []string
}

// Write writes the page. The cautions are printed with every view that people
// teach from.
func Write(w io.Writer, m *align.CountMap, cautions []string) error {
	return write(w, m, cautions, script, policy(script))
}

func write(w io.Writer, m *align.CountMap, cautions []string, script, policy string) error {
	d := documentOf(m, cautions)
	d.Style, d.Script, d.Policy = template.CSS(style), template.JS(script), policy
	return page.ExecuteTemplate(w, "page.html", d)
}

// documentOf is what a map says, in words.
func documentOf(m *align.CountMap, cautions []string) document {
	d := document{
		Class: m.Class, Length: say.Clock(m.Length),
		Data: stageOf(m), Parts: partsOf(m), Whole: append(findingsOn(m, 0), hers(m)...), Count: tally(m.Findings),
		Totals: totalsOf(m), Cautions: cautions,
	}
	if m.Slot > 0 {
		d.Slot = say.Clock(m.Slot)
	}
	d.Summary, d.Roomy = summariesOf(d)
	return d
}

// policy lets the page run its own script, play music and nothing else.
//
// Ref: W3C Content Security Policy Level 3.
func policy(script string) string {
	sum := sha256.Sum256([]byte(script))
	return "default-src 'none'; script-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
		"'; style-src 'unsafe-inline'; img-src data:; media-src 'self' file: blob:; base-uri 'none'; form-action 'none'"
}

func read(names []string) string {
	var b strings.Builder
	for _, n := range names {
		text, err := files.ReadFile("page/" + n)
		if err != nil {
			panic(err) // a slip in this file
		}
		b.Write(text)
	}
	return b.String()
}
