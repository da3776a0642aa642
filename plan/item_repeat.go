package plan

import (
	"fmt"
	"slices"

	"onphrase/plan/say"
)

// tell keeps items under their name, for a repeat further down.
func (r *reader) tell(name string, items []Item) {
	if name != "" && len(items) > 0 {
		r.told[nameKey(name)] = items
	}
}

// readRepeat reads an item that does an earlier one again: the last of that
// name above it, with its own words where it has any.
func readRepeat(m *mapping, it Item, _ *Catalog) []Item {
	n := m.value("repeat")
	var again Item
	m.words(&again)
	was := m.r.told[nameKey(it.Name)]
	if len(was) == 0 {
		if it.Name != "" {
			m.r.problem(n, fmt.Sprintf("no item above is called %s", shown(it.Name)), m.r.called(it.Name))
		}
		return nil
	}
	if !m.r.room(n, len(was)) {
		return nil
	}
	all := make([]Item, len(was))
	for i, w := range was {
		if w.Repeats == (Pos{}) {
			w.Repeats = w.Pos
		}
		w.Pos = it.Pos
		w.Known = slices.Concat(again.Known, w.Known)
		all[i] = w
	}
	all[0].says(again)
	return all
}

// says puts the words of another item over the item's own.
func (it *Item) says(other Item) {
	for to, text := range map[*string]string{&it.Cue: other.Cue, &it.Easier: other.Easier, &it.Harder: other.Harder} {
		if text != "" {
			*to = text
		}
	}
	if other.Setup != (Length{}) {
		it.Setup = other.Setup
	}
}

// called guesses which item above was meant.
func (r *reader) called(name string) string {
	var names []string
	for _, items := range r.told {
		names = append(names, items[0].Name)
	}
	slices.Sort(names) // a map has no order: the same answer every time
	if near, ok := say.Nearest(name, names); ok {
		return near + "?"
	}
	return "a repeat names a block, set, interval or superset that stands above it"
}
