package web

import (
	"fmt"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// totals are the class in figures, for the desk and the summary sheet.
type totals struct {
	Kit      []string
	Patterns []string
	Shares   []string
	Found    []found
}

// found is a finding with its place, for paper.
type found struct {
	Where string
	finding
}

func totalsOf(m *align.CountMap) totals {
	var t totals
	for _, k := range m.Summary.Kit {
		s := k.Item
		if len(k.Weights) > 0 {
			s += ": " + strings.Join(k.Weights, ", ")
		}
		t.Kit = append(t.Kit, s)
	}
	for _, p := range m.Summary.Patterns {
		s := fmt.Sprintf("%s %d", p.Name, p.Reps)
		if sides := p.Sides(); sides != "" {
			s += " (" + sides + ")"
		}
		t.Patterns = append(t.Patterns, s)
	}
	for _, s := range m.Summary.Shares {
		t.Shares = append(t.Shares, fmt.Sprintf("%s %s (%.0f %%)", s.Kind, say.Clock(s.Seconds), 100*s.Share))
	}
	for _, g := range grades {
		for _, f := range m.Findings {
			if f.Severity == g.of {
				t.Found = append(t.Found, found{whereOf(f), finding{string(f.Severity), g.label, f.Code, f.Message, f.Fix,
					f.Source}})
			}
		}
	}
	return t
}

func whereOf(f align.Finding) string {
	switch {
	case f.Part == "":
		return "the class"
	case f.Row == 0:
		return f.Part
	}
	return f.Part + ", " + f.Rows()
}
