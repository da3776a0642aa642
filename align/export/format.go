package export

import (
	"fmt"
	"io"
	"strings"

	"onphrase/align"
)

// Format is a way to write a count map.
type Format struct {
	Name  string // as asked for: text, csv
	Ext   string // of a file, with its dot
	About string // one line
	Write func(io.Writer, *align.CountMap) error
}

// Formats lists the formats, the first being the default.
func Formats() []Format {
	return []Format{
		{"text", ".txt", "an aligned table for a terminal or a printer", writeText},
		{"csv", ".csv", "rows for a spreadsheet (RFC 4180, UTF-8)", writeCSV},
		{"json", ".json", "everything, for programs (onphrase.map/1)", writeJSON},
		{"markdown", ".md", "tables for notes and web pages", writeMarkdown},
	}
}

// Find returns the format of a name or a file name's extension. An unknown
// name is answered with the nearest one.
func Find(name string) (Format, error) {
	want := strings.ToLower(strings.TrimSpace(name))
	best, slips := "", len(want)/2+2
	var names []string
	for _, f := range Formats() {
		if want == f.Name || want == f.Ext || "."+want == f.Ext {
			return f, nil
		}
		names = append(names, f.Name)
		if d := distance(want, f.Name); d < slips {
			best, slips = f.Name, d
		}
	}
	err := fmt.Errorf("no format %q; there are %s", name, strings.Join(names, ", "))
	if best != "" {
		err = fmt.Errorf("no format %q; did you mean %s? There are %s", name, best, strings.Join(names, ", "))
	}
	return Format{}, err
}

// distance is the number of letters to add, drop or change to make b of a.
//
// Ref: Levenshtein 1966.
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
