package main

import (
	"fmt"
	"strings"
)

// labelColumns is where the text of details begins [columns].
const labelColumns = 13

// details is text about one thing: a title and labelled paragraphs below it.
type details struct {
	strings.Builder
	width int // of the screen [columns]
}

func (d *details) title(text string) { fmt.Fprintln(d, text) }

// line adds a paragraph; one with an empty label goes on with the last.
func (d *details) line(label, format string, args ...any) {
	for _, text := range wrap(fmt.Sprintf(format, args...), d.width-labelColumns) {
		fmt.Fprintf(d, "  %-*s%s\n", labelColumns-2, label, text)
		label = ""
	}
}
