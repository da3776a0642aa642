package export

import (
	"encoding/json"
	"io"

	"onphrase/align"
)

// Schema names the form of the JSON output. Within /1 fields are only added.
const Schema = "onphrase.map/1"

func writeJSON(w io.Writer, m *align.CountMap) error {
	out := *m
	out.Parts = list(m.Parts)
	out.Rows = list(m.Rows)
	out.Findings = list(m.Findings)
	for i := range out.Parts {
		out.Parts[i].Tracks = list(out.Parts[i].Tracks)
	}
	for i := range out.Rows {
		out.Rows[i].Moves = list(out.Rows[i].Moves)
	}
	for i := range out.Findings {
		out.Findings[i].Also = list(out.Findings[i].Also)
		if out.Findings[i].Figures == nil {
			out.Findings[i].Figures = map[string]float64{}
		}
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(struct {
		Schema string `json:"schema"`
		align.CountMap
	}{Schema, out})
}

// list is a copy that is never nil, so that JSON shows [] and not null.
func list[T any](s []T) []T { return append([]T{}, s...) }
