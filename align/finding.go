package align

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
	Also     []int              `json:"also"` // more rows of the same line that it holds for, as in other rounds
}

// Severity grades a finding.
type Severity string

const (
	Note  Severity = "note"
	Watch Severity = "watch"
	Fix   Severity = "fix"
)
