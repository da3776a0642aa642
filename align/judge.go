package align

import "onphrase/plan"

// judge goes through a part item by item, for the checks whose findings on an
// item depend on nothing but the item, where it lies, and the items next to
// it. Build goes through a whole class with it, a Trial through what a search
// tries: there is one copy of these rules.
type judge struct {
	*placedClass
	part     *placedPart
	checks   []Check
	from, to int // the rows of the item, with the waits before it: from, and before to
	was, now memory
}

// memory is what a judge keeps of the items behind it.
type memory struct {
	ended  bool       // the music was over
	across *plan.Item // the last item found to run across an odd phrase
	inside *plan.Item // the last item found to start inside a phrase because of the one before
}

// itemChecks are the checks that go item by item.
func itemChecks() []Check {
	var all []Check
	for _, c := range Checks() {
		if c.step != nil {
			all = append(all, c)
		}
	}
	return all
}

// step judges one item more, and how the one before it ends.
func (j *judge) step(from, to int) []Finding {
	j.from, j.to, j.was = from, to, j.now
	var out []Finding
	for _, c := range j.checks {
		for _, f := range c.step(j) {
			f.Code = c.Code
			out = append(out, f)
		}
	}
	return out
}

// whole goes through all items of the part; the last step has no item and
// judges how the part ends.
func (j *judge) whole() []Finding {
	var out []Finding
	for from := 0; from < len(j.part.rows); from = j.to {
		out = append(out, j.step(from, j.part.itemEnd(from))...)
	}
	return append(out, j.step(len(j.part.rows), len(j.part.rows))...)
}

// last reports whether the part is over and only its end is left to judge.
func (j *judge) last() bool { return j.from == j.to }

// itemEnd is the row after the last of the item that row i is, or waits for.
func (p *placedPart) itemEnd(i int) int {
	for i < len(p.rows) && p.rows[i].item == nil {
		i++
	}
	for end := i; end < len(p.rows); end++ {
		switch it := p.rows[end].item; it {
		case p.rows[i].item:
			i = end
		case nil: // between two sides of the item, or before the next one
		default:
			return i + 1
		}
	}
	return min(i+1, len(p.rows))
}

// byItem gathers what the checks find that go item by item, by their codes.
func (l *placedClass) byItem() map[string][]Finding {
	all := map[string][]Finding{}
	for _, p := range l.parts {
		j := judge{placedClass: l, part: p, checks: itemChecks()}
		for _, f := range j.whole() {
			all[f.Code] = append(all[f.Code], f)
		}
	}
	return all
}
