package export

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// firstThing says in a line what to do first, from the gravest finding.
func firstThing(m *align.CountMap) string {
	if len(m.Findings) == 0 {
		return "Nothing to report."
	}
	f := m.Findings[0]
	way, _, _ := strings.Cut(f.Fix, "; ")
	first := fmt.Sprintf("First: %s (%s).", way, placeOf(f))
	switch f.Severity {
	case align.Fix:
		return first
	case align.Watch:
		return "Nothing has to be fixed. " + first
	}
	return "Nothing has to be fixed, nothing to watch."
}

// placeOf is where a finding is, for a person.
func placeOf(f align.Finding) string {
	switch {
	case f.Part == "":
		return "the class"
	case f.Row == 0:
		return f.Part
	}
	return f.Part + ", row " + strconv.Itoa(f.Row)
}

// figuresOf writes the figures of a finding, by name.
func figuresOf(f align.Finding) string {
	var all []string
	for _, name := range slices.Sorted(maps.Keys(f.Figures)) {
		all = append(all, strings.ReplaceAll(name, "_", " ")+" "+say.Num(f.Figures[name], 3))
	}
	return strings.Join(all, ", ")
}
