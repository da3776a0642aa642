package align

import (
	"cmp"
	"slices"
	"strconv"

	"onphrase/plan"
	"onphrase/plan/say"
)

// Finding is advice about the class, never an error.
type Finding struct {
	Code     string             `json:"code"`
	Severity Severity           `json:"severity"`
	Part     string             `json:"part"`
	Row      int                `json:"row"`  // the row it is about, 0 when none
	Line     int                `json:"line"` // in the class file, 0 when none
	Message  string             `json:"message"`
	Figures  map[string]float64 `json:"figures"`
	Source   string             `json:"source"`
	Fix      string             `json:"fix"`  // the smallest change that removes it
	Also     []int              `json:"also"` // more rows that it holds for

	Reason string `json:"reason,omitempty"` // why she stands by it, in her own words; of a known one only

	Of *plan.Item `json:"-"` // what it is about, while it is judged; nil when that is no item
}

// Severity grades a finding.
type Severity string

const (
	Note  Severity = "note"
	Watch Severity = "watch"
	Fix   Severity = "fix"
)

// rank orders severities, the gravest first.
func (s Severity) rank() int {
	switch s {
	case Fix:
		return 0
	case Watch:
		return 1
	}
	return 2
}

// Graver compares two findings by their severity, for a list that has the
// gravest first.
func Graver(a, b Finding) int { return cmp.Compare(a.Severity.rank(), b.Severity.rank()) }

// Rows names the rows that it holds for: "row 3", "rows 3, 9 and 12"; nothing
// for one about the class as a whole.
func (f Finding) Rows() string {
	switch {
	case f.Row == 0:
		return ""
	case len(f.Also) == 0:
		return "row " + strconv.Itoa(f.Row)
	}
	var rows []string
	for _, n := range slices.Sorted(slices.Values(append([]int{f.Row}, f.Also...))) {
		rows = append(rows, strconv.Itoa(n))
	}
	return "rows " + say.And(rows)
}
