package main

import (
	"path/filepath"

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

// pick finds the format asked for: by name, else by the ending of the file to
// write, else the first.
func (o *mapOptions) pick() (export.Format, error) {
	name := o.format
	if name == "" && o.out != "-" {
		name = filepath.Ext(o.out)
	}
	if name == "" {
		return export.Formats()[0], nil
	}
	f, err := export.Find(name)
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
