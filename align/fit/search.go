package fit

import (
	"container/heap"
	"slices"

	"onphrase/align"
	"onphrase/plan"
)

// search goes through everything that a part may become, in the order of what
// it costs, so that the first that is complete is the cheapest (Dijkstra). A
// way that has come to the same state as cheaper ways is dropped: all that
// follows would be the same (dynamic programming over items and positions).
//
// Ref: Dijkstra 1959, Numer Math 1:269-271; Bellman 1957.
type search struct {
	*choices
	queue    queue
	reached  map[key]*meeting
	names    map[name]int32
	complete [][]int32
	best     *node // the cheapest that is complete
	tried    int
	effort   effort
}

// meeting is where ways meet: the cheapest of them, and what may be done
// from there on.
type meeting struct {
	ways [][]int32 // tweaks of each
	open []step    // the cheapest first
}

// placement is an item laid from a state: whatever led there, the end is the same.
type placement struct {
	variant       int
	state         align.StateKey
	entry, option int
	hold          int
}

// outcome is what comes of a step.
type outcome struct {
	state align.State
	found align.Tally
}

// node is a part decided up to some item.
type node struct {
	before  *node
	step    step
	cost    int
	variant int
	next    int  // entry to lay
	held    bool // a hold was laid before it
	late    bool // the entry after it is laid already
	state   align.State
	decided string // decisions that hold for entries to come
	tweaks  []int32
	left    int // what of the cost is for findings
	at      *meeting
	tried   int // steps from there
}

// step is one decision.
type step struct {
	price   int
	entry   int // the entry laid; of a hold, before which it is
	option  int
	hold    int // counts; 0: an item is laid
	free    bool
	swap    bool // the entry is laid before the one it follows
	start   plan.Start
	begin   bool
	variant int
	forced  bool // decided before, in another round
}

// key is what the rest of a part depends on.
type key struct {
	variant, next int
	held, late    bool
	state         align.StateKey
	decided       string
}

// name tells one tweak of a part from another.
type name struct {
	kind   Kind
	on     int
	detail string
}

func newSearch(r *choices, e effort) *search {
	s := &search{choices: r, reached: map[key]*meeting{}, names: map[name]int32{}, effort: e}
	heap.Push(&s.queue, &node{next: -1, at: &meeting{open: s.beginnings()}})
	return s
}

// beginnings lists where and at which tempo the part may start.
func (s *search) beginnings() []step {
	var all []step
	now := s.variants[0].trial.PhraseOf(s.part.Start)
	for w := range s.variants {
		all = append(all, step{price: s.variants[w].price, variant: w, begin: true, start: s.part.Start})
		for n := 1; n <= s.variants[w].trial.Phrases(); n++ {
			start := plan.Start{Phrase: n}
			if n == now && (s.part.Start.Phrase == n || s.part.Start == plan.Start{}) {
				continue
			}
			all = append(all, step{price: s.variants[w].price + s.prices[Start] + s.prices[Phrase]*abs(n-now), variant: w,
				begin: true, start: start})
		}
	}
	return sorted(all)
}

func sorted(all []step) []step {
	slices.SortStableFunc(all, func(a, b step) int { return a.price - b.price })
	return all
}

// found is the next cheapest way through the part, nil when there is none.
// Ways that contain another one already found are passed over, and so are
// those that leave more behind than the first or are much dearer.
func (s *search) found() *node {
	for len(s.queue) > 0 && s.tried < s.effort.steps {
		n := heap.Pop(&s.queue).(*node)
		if s.best != nil && n.due() > s.best.left+s.far() {
			return nil
		}
		if n.at == nil && !s.meet(n) {
			continue
		}
		if n.next == len(s.entries) {
			if contains(s.complete, n.tweaks) {
				continue
			}
			if s.best == nil {
				s.best = n
			}
			s.complete = append(s.complete, n.tweaks)
			return n
		}
		if child := s.do(n); s.wanted(child) {
			heap.Push(&s.queue, child)
		}
		if n.tried < len(n.at.open) {
			heap.Push(&s.queue, n)
		}
	}
	return nil
}

// far is the price above which changes are no alternative to the best ones:
// three times as much, and at least as much as two changes more.
func (s *search) far() int {
	price := s.best.cost - s.best.left
	return max(3*price, price+2*(s.prices[Reps]+eight*s.prices[Rep]))
}

// wanted reports whether a way is worth following.
func (s *search) wanted(n *node) bool {
	if s.best != nil && n.left > s.best.left {
		return false
	}
	c := s.reached[n.key()]
	return c == nil || len(c.ways) < s.effort.ways && !contains(c.ways, n.tweaks)
}

// meet notes a way where it meets others, unless enough better ones do.
func (s *search) meet(n *node) bool {
	if !s.wanted(n) {
		return false
	}
	k := n.key()
	c := s.reached[k]
	if c == nil {
		c = &meeting{}
		if n.next < len(s.entries) {
			c.open = s.steps(n)
		}
		s.reached[k] = c
	}
	c.ways = append(c.ways, n.tweaks)
	n.at = c
	return true
}

func (n *node) key() key {
	return key{n.variant, n.next, n.held, n.late, n.state.Key(), n.decided}
}

// contains reports whether one of the ways consists of nothing but some of
// the tweaks.
func contains(ways [][]int32, tweaks []int32) bool {
	for _, w := range ways {
		i := 0
		for _, m := range tweaks {
			if i < len(w) && w[i] == m {
				i++
			}
		}
		if i == len(w) {
			return true
		}
	}
	return false
}

// do takes the next step from a node.
func (s *search) do(n *node) *node {
	s.tried++
	st := n.at.open[n.tried]
	to := s.take(n, st)
	n.tried++
	child := &node{before: n, step: st, variant: n.variant, next: n.next, late: n.late, state: to.state,
		decided: n.decided}
	child.left = n.left + s.prices.tally(to.found)
	child.cost = n.cost - n.left + st.price + child.left
	switch {
	case st.begin:
		child.variant, child.next = st.variant, 0
	case st.hold > 0:
		child.held = true
	case st.swap:
		child.late = true
	case n.late:
		child.next, child.late = n.next+2, false
	default:
		child.next++
	}
	if st.hold == 0 && !st.begin && !st.forced && s.entries[st.entry].options[st.option].waits {
		child.cost += s.prices.held(to.state.Waited)
	}
	child.tweaks = with(n.tweaks, s.namesOf(st))
	child.decided = s.decided(n, child)
	return child
}

// take lays what a step asks for, once for all ways that come to it.
func (s *search) take(n *node, st step) outcome {
	if st.begin {
		state, found := s.variants[st.variant].trial.Begin(st.start)
		return outcome{state, found}
	}
	k := placement{n.variant, n.state.Key(), st.entry, st.option, st.hold}
	e, known := s.laid[k]
	if known {
		return e
	}
	it := s.entries[st.entry].items[st.option]
	if st.hold > 0 {
		it = holdItem(st)
	}
	e.state, e.found = s.variants[n.variant].trial.Next(n.state, it)
	s.laid[k] = e
	return e
}

// with adds tweaks to a sorted list of tweaks.
func with(tweaks, more []int32) []int32 {
	if len(more) == 0 {
		return tweaks
	}
	all := slices.Concat(tweaks, more)
	slices.Sort(all)
	return slices.Compact(all)
}

// number is that of a tweak, the same whenever it is met again.
func (s *search) number(n name) int32 {
	id, known := s.names[n]
	if !known {
		id = int32(len(s.names))
		s.names[n] = id
	}
	return id
}
