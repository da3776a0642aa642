package plan

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// maxRounds bounds how often a part or a superset is done.
const maxRounds = 20

// maxItems bounds how many items a class comes to when every round and every
// repeat is written out: two hours of ten seconds each, twice over.
const maxItems = 1500

// doList reads the items of a part or a superset, each once.
func (m *mapping) doList(c *Catalog) []Item {
	var all []Item
	for _, n := range m.needList("do", "do: and below it - {pause: water, time: 30s}") {
		all = append(all, m.r.item(n, c)...)
	}
	return all
}

// rounds reads how often the items are done and writes them out as often.
func (m *mapping) rounds(of string, items []Item) []Item {
	n := m.take("rounds")
	if n == nil {
		return items
	}
	last := read(m, "rounds", n, whole(1, maxRounds))
	if last < 2 || !m.r.room(n, (last-1)*len(items)) {
		return items
	}
	var all []Item
	for round := range last {
		all = append(all, inRound(Round{Of: of, N: round + 1, Last: last}, items)...)
	}
	return all
}

// String names the round for a person: "round 2 of 3".
func (r Round) String() string {
	what := "round"
	if r.Series {
		what = "interval"
	}
	return fmt.Sprintf("%s %d of %d", what, r.N, r.Last)
}

// inRound copies items into one round of what contains them.
func inRound(r Round, items []Item) []Item {
	all := make([]Item, len(items))
	for i, it := range items {
		it.Rounds = append([]Round{r}, it.Rounds...)
		all[i] = it
	}
	return all
}

// room notes n more items at a place, and whether a class may have them.
func (r *reader) room(at *yaml.Node, n int) bool {
	if r.total+n > maxItems {
		r.problem(at, fmt.Sprintf("with this the class comes to more than %d items", maxItems), "fewer rounds or repeats")
		return false
	}
	r.total += n
	return true
}
