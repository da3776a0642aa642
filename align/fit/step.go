package fit

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"onphrase/plan"
)

// steps lists what may be done at a node, the cheapest first.
func (s *search) steps(n *node) []step {
	var all []step
	k := n.next
	if !n.held {
		holds, forced := s.holds(n)
		if forced {
			return holds
		}
		all = append(all, holds...)
	}
	all = append(all, s.items(n, k, false)...)
	if s.entries[k].swaps && !n.late {
		all = append(all, s.items(n, k+1, true)...)
	}
	return sorted(all)
}

// items lists the steps that lay an entry, each as one of its options.
func (s *search) items(n *node, k int, swap bool) []step {
	sl := &s.entries[k]
	if o, ok := n.decision(sl.written); ok {
		return []step{{entry: k, option: o, forced: true}}
	}
	var all []step
	for i := range sl.options {
		st := step{entry: k, option: i, price: sl.options[i].price, swap: swap}
		if swap {
			st.price += s.prices[Swap]
		}
		all = append(all, st)
	}
	return all
}

// holds lists the holds that may be laid before the next entry: to every eight
// up to the end of the phrase. forced says that it was decided in another
// round.
func (s *search) holds(n *node) (all []step, forced bool) {
	k := n.next
	place := s.entries[k].place
	if place == noHold {
		return nil, false
	}
	if h, ok := n.decision(place); ok {
		if h == 0 {
			return nil, false
		}
		return []step{{entry: k, hold: h / 2, free: h%2 == 1, forced: true}}, true
	}
	first := (eight - (n.state.InPhrase-1)%eight) % eight
	for c := first; c <= n.state.Left; c += eight {
		if c > 0 {
			all = append(all, s.hold(k, c, first > 0))
		}
	}
	if rest := n.state.Left; (rest-first)%eight != 0 || rest < first {
		all = append(all, s.hold(k, rest, first > 0))
	}
	return all, false
}

func (s *search) hold(k, counts int, free bool) step {
	return step{entry: k, hold: counts, free: free, price: s.prices[Hold] + s.prices.held(counts)}
}

// holdName is what a hold is called in the file.
const holdName = "hold"

// holdItem is the hold of a step as an item.
func holdItem(st step) *plan.Item {
	it := &plan.Item{Name: holdName, Work: plan.Pause{Time: plan.Length{Counts: st.hold}, Kind: plan.Rest}}
	if st.free {
		it.On = plan.OnCount
	}
	return it
}

// decision is what was decided for all entries of one place in the file.
func (n *node) decision(d int) (choice int, ok bool) {
	for _, each := range strings.Fields(n.decided) {
		at, value, _ := strings.Cut(each, "=")
		if at == strconv.Itoa(d) {
			choice, err := strconv.Atoi(value)
			return choice, err == nil
		}
	}
	return 0, false
}

// decided is what a child of a node must remember for entries to come.
func (s *search) decided(n, child *node) string {
	st := child.step
	if st.begin {
		return ""
	}
	var all []string
	add := func(d, value int) {
		if d != noHold && s.shared[d] {
			all = append(all, fmt.Sprintf("%d=%d", d, value))
		}
	}
	for _, each := range strings.Fields(n.decided) {
		at, _, _ := strings.Cut(each, "=")
		if d, err := strconv.Atoi(at); err == nil && s.lastAt[d] >= child.next {
			all = append(all, each)
		}
	}
	switch {
	case st.forced:
	case st.hold > 0:
		value := 2 * st.hold
		if st.free {
			value++
		}
		add(s.entries[st.entry].place, value)
	default:
		sl := &s.entries[st.entry]
		if sl.place != noHold && !n.held {
			if _, known := n.decision(sl.place); !known && s.lastAt[sl.place] >= child.next {
				add(sl.place, 0)
			}
		}
		if s.lastAt[sl.written] >= child.next {
			add(sl.written, st.option)
		}
	}
	sort.Strings(all)
	return strings.Join(all, " ")
}

// namesOf numbers the tweaks of a step.
func (s *search) namesOf(st step) []int32 {
	var all []int32
	switch {
	case st.forced:
	case st.begin:
		for _, m := range s.variants[st.variant].tweaks {
			all = append(all, s.number(name{m.kind, 0, m.detail}))
		}
		if st.start != s.part.Start {
			all = append(all, s.number(name{Start, st.start.Phrase, ""}))
		}
	case st.hold > 0:
		all = append(all, s.number(name{Hold, s.entries[st.entry].place, strconv.Itoa(st.hold)}))
	default:
		sl := &s.entries[st.entry]
		for _, m := range sl.options[st.option].tweaks {
			all = append(all, s.number(name{m.kind, sl.written, m.detail}))
		}
		if st.swap {
			all = append(all, s.number(name{Swap, sl.written, ""}))
		}
	}
	return all
}
