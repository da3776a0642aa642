package fit

import (
	"onphrase/align"
	"onphrase/plan"
)

// further looks for changes of the class that the best plan makes, and adds
// them to it. It reports whether there were any.
func (j *Job) further(res *Result) (bool, error) {
	best := &res.Plans[0]
	on := *j
	on.Src = best.Src
	next, err := on.once()
	if err != nil || len(next.Plans[0].Changes) == 0 {
		return false, err
	}
	p := next.Plans[0]
	lines := j.lines(best.Src)
	for _, c := range p.Changes {
		if line, known := lines[c.Line]; known {
			c.Line = line
		}
		best.Changes = append(best.Changes, c)
	}
	best.Price += p.Price
	best.Src, best.After = p.Src, p.After
	best.Differences = align.Differ(res.Before, best.After)
	best.Cost = best.Price + j.Prices.left(best.After.Findings) + j.Prices.caused(best.New)
	return true, nil
}

// lines says which line of the class as it is a line of the class as changed
// was: that of the same part or item. A hold that was put in belongs to the
// item behind it.
func (j *Job) lines(changed []byte) map[int]int {
	was, _ := plan.ParseWith(j.File, j.Src, j.Known)
	is, _ := plan.ParseWith(j.File, changed, j.Known)
	all := map[int]int{}
	for n := range min(len(was.Parts), len(is.Parts)) {
		all[is.Parts[n].Pos.Line] = was.Parts[n].Pos.Line
		old, k := places(was.Parts[n].Items), 0
		for _, it := range places(is.Parts[n].Items) {
			if k == len(old) {
				break
			}
			all[it.Pos.Line] = old[k].Pos.Line
			if it.Name != holdName || old[k].Name == holdName {
				k++
			}
		}
	}
	return all
}

// places lists items once for every place in the file.
func places(items []plan.Item) []plan.Item {
	var all []plan.Item
	seen := map[plan.Pos]bool{}
	for _, it := range items {
		if !seen[it.Pos] {
			seen[it.Pos] = true
			all = append(all, it)
		}
	}
	return all
}
