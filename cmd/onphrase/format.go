package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"onphrase/align"
	"onphrase/align/export"
)

// formatNames lists the formats of a count map, the default first.
func formatNames() []string {
	var names []string
	for _, f := range export.Formats() {
		names = append(names, f.Name)
	}
	return names
}

// timedNames lists the formats that go along with sound.
func timedNames() []string {
	var names []string
	for _, f := range export.Formats() {
		if f.Timed {
			names = append(names, f.Name)
		}
	}
	return names
}

// formatLines lists the formats for the help, a line each.
func formatLines() string {
	var b strings.Builder
	for _, f := range export.Formats() {
		fmt.Fprintf(&b, "  %-9s %s\n", f.Name, f.About)
	}
	return b.String()
}

// pick finds the format asked for: by name, else by the ending of the file to
// write, else the first.
func (o *mapOptions) pick() (export.Format, error) {
	var f export.Format
	var err error
	switch {
	case o.format != "":
		f, err = export.Find(o.format)
	case o.out != "-" && filepath.Ext(o.out) != "":
		f, err = export.ForFile(o.out)
	default:
		f = export.Formats()[0]
	}
	if err != nil {
		return export.Format{}, usage("choose one with -f", "%s", err)
	}
	return f, nil
}

// write writes a count map to the user's screen; the text formats there follow
// its width and colours.
func (s *streams) write(m *align.CountMap, f export.Format, class string) error {
	if f.Name == formatNames()[0] {
		return export.Text(s.out, m, s.style(class))
	}
	return f.Write(s.out, m)
}

// style is how text looks on the user's screen.
func (s *streams) style(class string) export.Style {
	return export.Style{Color: s.color, Width: s.width, File: class}
}
