package fit

import "onphrase/align"

// subject is what a finding is about, whatever its figures: lines and rows
// move when a class changes.
type subject struct {
	code, part, item string
	severity         align.Severity
}

// compare sorts the findings into those that are gone, left and new.
func (p *Plan) compare(before *align.CountMap) {
	known := map[subject]int{}
	for _, f := range before.Findings {
		known[subjectOf(before, f)]++
	}
	still := map[subject]int{}
	for _, f := range p.After.Findings {
		s := subjectOf(p.After, f)
		if known[s] > still[s] {
			still[s]++
			p.Left = append(p.Left, f)
		} else {
			p.New = append(p.New, f)
		}
	}
	for _, f := range before.Findings {
		s := subjectOf(before, f)
		if still[s] > 0 {
			still[s]--
		} else {
			p.Gone = append(p.Gone, f)
		}
	}
}

func subjectOf(m *align.CountMap, f align.Finding) subject {
	s := subject{code: f.Code, part: f.Part, severity: f.Severity}
	if f.Row > 0 && f.Row <= len(m.Rows) && ours(f) && f.Code != "music-ends-first" {
		s.item = m.Rows[f.Row-1].Item
	}
	return s
}
