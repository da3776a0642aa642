package fit

import "onphrase/align"

// Why says why a search leaves a finding: what would remove it is none of its
// changes, or costs more than to leave it.
func Why(f align.Finding) string {
	check, _ := align.Explain(f.Code)
	return check.Left
}
