package plan

import "slices"

// readSuperset reads items done in turn, for as many rounds as it says.
func readSuperset(m *mapping, it Item, c *Catalog) []Item {
	var items []Item
	for _, n := range m.needList("do", "do: and below it - {set: squat, reps: 8 x 2-2}") {
		for _, inner := range m.r.item(n, c) {
			if inner.inSuperset() {
				m.r.problem(n, "a superset stands inside the superset "+shown(it.Name),
					"write its sets out here, or make two supersets one after the other")
				break
			}
			items = append(items, inner)
		}
	}
	known := m.stands()
	for i := range items {
		items[i].Known = slices.Concat(items[i].Known, known)
	}
	if !m.has("rounds") {
		m.ask("rounds")
		return inRound(Round{Of: it.Name, N: 1, Last: 1}, items)
	}
	return m.rounds(it.Name, items)
}

// inSuperset reports whether the item is written inside a superset. One that
// repeats another is not.
func (it Item) inSuperset() bool {
	for _, r := range it.Rounds {
		if r.Of != "" && !r.Series {
			return it.Repeats == Pos{}
		}
	}
	return false
}
