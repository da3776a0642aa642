package main

import (
	"io"
	"strings"

	"onphrase/plan/say"
)

// gap is the space before column i [columns]. Between figures, which line up
// on the right, less will do.
func (t *table) gap(i int) int {
	switch {
	case i == 0:
		return 0
	case t.cols[i-1].right && t.cols[i].right:
		return 1
	}
	return 2
}

// column heads a column of a table.
type column struct {
	head  string
	right bool // figures line up on the right
	least int  // may be wrapped down to this width; 0: never wrapped
}

// table is text in columns. Cells too wide for the screen go on in the line
// below: nothing is lost.
type table struct {
	cols []column
	rows [][]string
	// A row with fewer cells than columns: its last cell runs on to the right.
	foot string // a line below, where there is one
}

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

// write prints the table in at most width columns, if its least widths allow.
func (t *table) write(w io.Writer, screen int) error {
	widths := t.fit(screen)
	heads := make([]string, len(t.cols))
	for i, c := range t.cols {
		heads[i] = c.head
	}
	var b strings.Builder
	t.line(&b, widths, heads, screen)
	for _, row := range t.rows {
		t.line(&b, widths, row, screen)
	}
	if t.foot != "" {
		b.WriteString(t.foot + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// fit gives every column its natural width and then, where that is too much,
// takes from the widest of those that may be wrapped.
func (t *table) fit(screen int) []int {
	widths := make([]int, len(t.cols))
	total := 0
	for i, c := range t.cols {
		widths[i] = say.Columns(c.head)
		for _, row := range t.rows {
			if i < len(row)-1 || len(row) == len(t.cols) {
				widths[i] = max(widths[i], say.Columns(row[i]))
			}
		}
		total += t.gap(i) + widths[i]
	}
	for total > screen {
		widest := -1
		for i, c := range t.cols {
			if c.least > 0 && widths[i] > c.least && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
		total--
	}
	return widths
}

// line writes one row, on as many lines as its tallest cell needs.
func (t *table) line(b *strings.Builder, widths []int, cells []string, screen int) {
	parts := make([][]string, len(cells))
	tall, at := 0, 0
	for i, cell := range cells {
		w := widths[i]
		at += t.gap(i)
		if i == len(cells)-1 && i < len(t.cols)-1 {
			w = max(screen-at, w)
		}
		parts[i] = wrap(cell, w)
		tall = max(tall, len(parts[i]))
		at += widths[i]
	}
	for n := range tall {
		var text strings.Builder
		for i := range cells {
			text.WriteString(strings.Repeat(" ", t.gap(i)))
			cell := ""
			if n < len(parts[i]) {
				cell = parts[i][n]
			}
			runsOn := i == len(cells)-1 && i < len(t.cols)-1
			text.WriteString(pad(cell, widths[i], t.cols[i].right && !runsOn))
		}
		b.WriteString(strings.TrimRight(text.String(), " "))
		b.WriteByte('\n')
	}
}

// pad fills text with spaces to a width; right puts them before it.
func pad(text string, to int, right bool) string {
	if right {
		return strings.Repeat(" ", max(0, to-say.Columns(text))) + text
	}
	return say.Pad(text, to)
}
