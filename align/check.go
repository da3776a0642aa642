package align

import (
	"cmp"
	"slices"

	"onphrase/plan"
)

// Check is one thing that every class is looked at for. It is one file of
// this package: what it finds, why that matters, and on whose word.
type Check struct {
	Code     string                       // in plain words, for people and programs
	Title    string                       // one line
	Why      string                       // what goes wrong in front of the class
	Source   string                       // where its figures come from
	Severity Severity                     // the gravest it gives
	Left     string                       // what a search for changes answers that leaves one of its findings
	find     func(*placedClass) []Finding // over the whole class
	step     func(*judge) []Finding       // or item by item
	details  func(*plan.Catalog) []string
}

// Details lists, a line each, the figures that the check goes by: those of
// the program or, where she has set her own, the user's. Most checks have
// none.
func (c Check) Details(by *plan.Catalog) []string {
	if c.details == nil {
		return nil
	}
	return c.details(by)
}

// Checks lists every check, in the order in which their findings are shown
// for one row.
func Checks() []Check {
	return []Check{
		trackMissing, startMissing, musicEnds, rhythmTooFast, repTooShort, swingTooSlow,
		oddPhrase, changeTooShort, spareCounts, moveCut, sideMissing, alternatingOdd, sidesUnequal,
		warmUpJump, lowTrust, inThree, tempoBand, tempoStretch, tempoJump, loudnessJump, trackRepeated,
		classWaits, longUnderLoad, longHold,
		leadUneven, intervalRounded, intervalEnds, waterShort, waterGap, landingsMany,
		partMissing, partOrder, partShare, unbalanced, overSlot, underSlot,
	}
}

// Explain returns the check of a code.
func Explain(code string) (Check, bool) {
	all := Checks()
	i := slices.IndexFunc(all, func(c Check) bool { return c.Code == code })
	if i < 0 {
		return Check{}, false
	}
	return all[i], true
}

// check runs every check. Findings come with the gravest first, then in the
// order of the class; those about the class as a whole come last. Those that
// the instructor stands by are apart.
func (l *placedClass) check() (open, known []Finding) {
	var all []Finding
	byItem := l.byItem()
	for _, c := range Checks() {
		found := byItem[c.Code]
		if c.find != nil {
			found = c.find(l)
		}
		for _, f := range found {
			all = append(all, f.whole(c))
		}
	}
	slices.SortStableFunc(all, func(a, b Finding) int { return cmp.Compare(l.order(a), l.order(b)) })
	open, known = l.standing(l.oneCause(all))
	open = l.fold(open)
	slices.SortStableFunc(open, Graver)
	return open, l.fold(known)
}

// whole is a finding with nothing of its check missing.
func (f Finding) whole(c Check) Finding {
	f.Code = c.Code
	if f.Source == "" {
		f.Source = c.Source
	}
	figures := map[string]float64{}
	for k, v := range f.Figures {
		figures[k] = ms(v)
	}
	f.Figures, f.Also = figures, list(f.Also)
	return f
}

// list is a list that is never nil, for JSON.
func list[T any](s []T) []T { return append([]T{}, s...) }

// order is where a finding stands in the class: its row, or the last.
func (l *placedClass) order(f Finding) int {
	if f.Row > 0 {
		return f.Row
	}
	last := 0
	for _, p := range l.parts {
		last += len(p.rows)
		if f.Part != "" && p.part.Name == f.Part {
			return last
		}
	}
	return last + 1
}

// about starts a finding on a row.
func (r *placedRow) about(s Severity) Finding {
	return Finding{Severity: s, Part: r.Part, Row: r.Row.Row, Line: r.Line, Of: r.item}
}

// about starts a finding on a part as a whole, shown at its first row.
func (p *placedPart) about(s Severity, line int) Finding {
	f := Finding{Severity: s, Part: p.part.Name, Line: line}
	if len(p.rows) > 0 {
		f.Row = p.rows[0].Row.Row
	}
	return f
}

// each calls do for every row of the class.
func (l *placedClass) each(do func(p *placedPart, i int, r *placedRow)) {
	for _, p := range l.parts {
		for i := range p.rows {
			do(p, i, &p.rows[i])
		}
	}
}
