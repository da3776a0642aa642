package fit

import (
	"fmt"
	"slices"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/edit"
)

// Job is a class to fit to its music.
type Job struct {
	File   string        // of the class; it only stands in messages
	Src    []byte        // the class file
	Known  *plan.Catalog // the moves and figures known beforehand
	Tracks map[string]beat.Track
	Prices Prices
	Only   string // the name of the one part to change; empty: all
}

// Result is what came of it.
type Result struct {
	Src    []byte // as it is
	Before *align.CountMap
	Plans  []Plan   // up to three, the cheapest first; none of them contains another
	Cut    []string // parts that have too many ways to go through all of them
}

// Plan is a set of changes, and what the class is with them. Without changes
// it says that the class stays as it is.
type Plan struct {
	Changes []Change
	Price   int    // of the changes
	Cost    int    // of the changes and of the findings that are left or new
	Src     []byte // the class file with the changes
	After   *align.CountMap
	align.Differences
}

// plansShown is how many plans a search gives.
const plansShown = 3

// Search looks for the cheapest changes after which every item starts where
// it should, passes control and fits its music. Where the best plan leaves
// something, it goes on from there, until no change is worth its price: so a
// class that has been fitted stays as it is.
func Search(j Job) (*Result, error) {
	res, err := j.once()
	for err == nil && len(res.Plans[0].Changes) > 0 && j.Prices.left(res.Plans[0].After.Findings) > 0 {
		var more bool
		if more, err = j.further(res); !more {
			break
		}
	}
	return res, err
}

// once works through each part by itself and then holds whole classes against
// all checks, the cheapest first.
func (j *Job) once() (*Result, error) {
	class, problems := plan.ParseWith(j.File, j.Src, j.Known)
	if len(problems) > 0 {
		return nil, fmt.Errorf("%s", problems[0].In(j.File))
	}
	res := &Result{Src: j.Src, Before: align.Build(class, j.Tracks)}
	var parts [][]way
	for i := range class.Parts {
		ways := []way{{}}
		if j.Only == "" || j.Only == class.Parts[i].Name {
			found, cut := j.part(class, i)
			if cut {
				res.Cut = append(res.Cut, class.Parts[i].Name)
			}
			if len(found) > 0 {
				ways = found
			}
		}
		parts = append(parts, ways)
	}
	var err error
	res.Plans, err = j.classes(res.Before, parts)
	return res, err
}

// part lists the cheapest ways through one part. cut says that they may not
// be the cheapest because there were too many to go through.
func (j *Job) part(c *plan.Class, i int) (ways []way, cut bool) {
	r, ok := newChoices(c, i, j.Tracks, j.Prices)
	if !ok || len(r.entries) == 0 {
		return nil, false
	}
	if r.clean() {
		return []way{{}}, false
	}
	best := forBest
	if slices.Contains(r.shared, true) {
		best = forRounds
	}
	if ways = newSearch(r, best).ways(1); len(ways) == 0 {
		s := newSearch(r, forAny)
		if n := s.narrow(followed); n != nil {
			ways = append(ways, s.changes(n))
		}
		return ways, true
	}
	if all := newSearch(r, forOthers).ways(plansShown); len(all) > 0 {
		ways = all
	}
	return ways, false
}

// ways lists up to so many of the cheapest ways through the part; fewer when
// there are too many to go through.
func (s *search) ways(most int) []way {
	var all []way
	for len(all) < most {
		last := s.found()
		if last == nil {
			break
		}
		w := s.changes(last)
		all = append(all, w)
		if len(w.changes) == 0 { // all others contain it
			break
		}
	}
	return all
}

// clean reports whether there is nothing to find in the part as written.
func (r *choices) clean() bool {
	t := r.variants[0].trial
	state, sum := t.Begin(r.part.Start)
	for k := range r.entries {
		var found align.Tally
		state, found = t.Next(state, r.entries[k].items[0])
		sum.Fix, sum.Watch = sum.Fix+found.Fix, sum.Watch+found.Watch
	}
	return sum == align.Tally{}
}

// judge makes the changes in the file, reads it and lays it anew: what it
// costs is what the checks find then.
func (j *Job) judge(before *align.CountMap, changes []Change) (Plan, error) {
	p := Plan{Changes: changes, Src: j.Src, After: before}
	var edits []edit.Change
	for _, c := range changes {
		p.Price += c.Price
		if c.edit != nil {
			edits = append(edits, c.edit)
		}
	}
	if len(edits) > 0 {
		var err error
		if p.Src, err = edit.Apply(j.Src, edits); err != nil {
			return p, err
		}
		class, problems := plan.ParseWith(j.File, p.Src, j.Known)
		if len(problems) > 0 {
			return p, fmt.Errorf("with the changes: %s", problems[0].In(j.File))
		}
		p.After = align.Build(class, j.Tracks)
	}
	p.Differences = align.Differ(before, p.After)
	p.Cost = p.Price + j.Prices.left(p.After.Findings) + j.Prices.caused(p.New)
	return p, nil
}

// left is what the findings cost that a search is there to remove.
func (p Prices) left(all []align.Finding) int {
	sum := 0
	for _, f := range all {
		if ours(f) {
			sum += p.finding(f)
		}
	}
	return sum
}

// caused is what other findings cost that were not there before.
func (p Prices) caused(all []align.Finding) int {
	sum := 0
	for _, f := range all {
		if !ours(f) {
			sum += p.finding(f)
		}
	}
	return sum
}

func (p Prices) finding(f align.Finding) int {
	switch f.Severity {
	case align.Fix:
		return p[Fix] * (1 + len(f.Also))
	case align.Watch:
		return p[Watch] * (1 + len(f.Also))
	}
	return 0
}

// ours reports whether a finding is of the kind that a search removes.
func ours(f align.Finding) bool { return slices.Contains(align.TrialCodes(), f.Code) }
