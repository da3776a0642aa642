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
	out.Findings, out.Known = list(m.Findings), list(m.Known)
	for i := range out.Parts {
		out.Parts[i].Tracks = list(out.Parts[i].Tracks)
	}
	for i := range out.Rows {
		r := &out.Rows[i]
		r.Moves, r.Rounds, r.Marks = list(r.Moves), list(r.Rounds), list(r.Marks)
		for j := range r.Moves {
			r.Moves[j].With = list(r.Moves[j].With)
		}
	}
	for _, all := range [][]align.Finding{out.Findings, out.Known} {
		for i := range all {
			all[i].Also = list(all[i].Also)
			if all[i].Figures == nil {
				all[i].Figures = map[string]float64{}
			}
		}
	}
	out.Summary = wholeSummary(m.Summary)
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(struct {
		Schema string `json:"schema"`
		align.CountMap
	}{Schema, out})
}

// wholeSummary is the summary with no list missing.
func wholeSummary(s align.Summary) align.Summary {
	s.Shares, s.Patterns, s.Weights, s.Kit = list(s.Shares), list(s.Patterns), list(s.Weights), list(s.Kit)
	s.Loads = list(s.Loads)
	for i := range s.Kit {
		s.Kit[i].Weights = list(s.Kit[i].Weights)
	}
	return s
}

// list is a copy that is never nil, so that JSON shows [] and not null.
func list[T any](s []T) []T { return append([]T{}, s...) }
