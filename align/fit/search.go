package fit

import (
	"container/heap"
	"slices"

	"onphrase/align"
	"onphrase/plan"
)

// search goes through everything that a part may become, in the order of what
// it costs, so that the first that is complete is the cheapest (Dijkstra). A
// way that has come to the same spot as cheaper ways is dropped: all that
// follows would be the same (dynamic programming over items and positions).
//
// Ref: Dijkstra 1959, Numer Math 1:269-271; Bellman 1957.
type search struct {
	*room
	queue    queue
	reached  map[key]*crossing
	names    map[name]int32
	complete [][]int32
	best     *node // the cheapest that is complete
	tried    int
	effort   effort
}

// crossing is where ways meet: the cheapest of them, and what may be done
// from there on.
type crossing struct {
	ways [][]int32 // moves of each
	open []step    // the cheapest first
}

// laying is an item laid from a spot: whatever led there, the end is the same.
type laying struct {
	world        int
	spot         align.StateKey
	slot, option int
	hold         int
}

// end is what comes of a step.
type end struct {
	spot  align.State
	found align.Tally
}

// node is a part decided up to some item.
type node struct {
	before *node
	step   step
	cost   int
	world  int
	next   int  // slot to lay
	held   bool // a hold was laid before it
	late   bool // the slot after it is laid already
	spot   align.State
	said   string // decisions that hold for slots to come
	moves  []int32
	left   int // what of the cost is for findings
	at     *crossing
	tried  int // steps from there
}

// step is one decision.
type step struct {
	price  int
	slot   int // the slot laid; of a hold, before which it is
	option int
	hold   int // counts; 0: an item is laid
	free   bool
	swap   bool // the slot is laid before the one it follows
	start  plan.Start
	begin  bool
	world  int
	forced bool // decided before, in another round
}

// key is what the rest of a part depends on.
type key struct {
	world, next int
	held, late  bool
	spot        align.StateKey
	said        string
}

// name tells one move of a part from another.
type name struct {
	kind   Kind
	on     int
	detail string
}

func newSearch(r *room, e effort) *search {
	s := &search{room: r, reached: map[key]*crossing{}, names: map[name]int32{}, effort: e}
	heap.Push(&s.queue, &node{next: -1, at: &crossing{open: s.beginnings()}})
	return s
}

// beginnings lists where and at which tempo the part may start.
func (s *search) beginnings() []step {
	var all []step
	now := s.worlds[0].trial.PhraseOf(s.part.Start)
	for w := range s.worlds {
		all = append(all, step{price: s.worlds[w].price, world: w, begin: true, start: s.part.Start})
		for n := 1; n <= s.worlds[w].trial.Phrases(); n++ {
			start := plan.Start{Phrase: n}
			if n == now && (s.part.Start.Phrase == n || s.part.Start == plan.Start{}) {
				continue
			}
			all = append(all, step{price: s.worlds[w].price + s.prices[Start] + s.prices[Phrase]*abs(n-now), world: w, begin: true, start: start})
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
		if n.next == len(s.slots) {
			if contains(s.complete, n.moves) {
				continue
			}
			if s.best == nil {
				s.best = n
			}
			s.complete = append(s.complete, n.moves)
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
	return c == nil || len(c.ways) < s.effort.ways && !contains(c.ways, n.moves)
}

// meet notes a way where it meets others, unless enough better ones do.
func (s *search) meet(n *node) bool {
	if !s.wanted(n) {
		return false
	}
	k := n.key()
	c := s.reached[k]
	if c == nil {
		c = &crossing{}
		if n.next < len(s.slots) {
			c.open = s.steps(n)
		}
		s.reached[k] = c
	}
	c.ways = append(c.ways, n.moves)
	n.at = c
	return true
}

func (n *node) key() key {
	return key{n.world, n.next, n.held, n.late, n.spot.Key(), n.said}
}

// contains reports whether one of the ways consists of nothing but some of
// the moves.
func contains(ways [][]int32, moves []int32) bool {
	for _, w := range ways {
		i := 0
		for _, m := range moves {
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
	child := &node{before: n, step: st, world: n.world, next: n.next, late: n.late, spot: to.spot, said: n.said}
	child.left = n.left + s.prices.tally(to.found)
	child.cost = n.cost - n.left + st.price + child.left
	switch {
	case st.begin:
		child.world, child.next = st.world, 0
	case st.hold > 0:
		child.held = true
	case st.swap:
		child.late = true
	case n.late:
		child.next, child.late = n.next+2, false
	default:
		child.next++
	}
	if st.hold == 0 && !st.begin && !st.forced && s.slots[st.slot].options[st.option].waits {
		child.cost += s.prices.held(to.spot.Waited)
	}
	child.moves = with(n.moves, s.namesOf(st))
	child.said = s.decided(n, child)
	return child
}

// take lays what a step asks for, once for all ways that come to it.
func (s *search) take(n *node, st step) end {
	if st.begin {
		spot, found := s.worlds[st.world].trial.Begin(st.start)
		return end{spot, found}
	}
	k := laying{n.world, n.spot.Key(), st.slot, st.option, st.hold}
	e, known := s.laid[k]
	if known {
		return e
	}
	it := s.slots[st.slot].items[st.option]
	if st.hold > 0 {
		it = holdItem(st)
	}
	e.spot, e.found = s.worlds[n.world].trial.Next(n.spot, it)
	s.laid[k] = e
	return e
}

// with adds moves to a sorted list of moves.
func with(moves, more []int32) []int32 {
	if len(more) == 0 {
		return moves
	}
	all := slices.Concat(moves, more)
	slices.Sort(all)
	return slices.Compact(all)
}

// number is that of a move, the same whenever it is met again.
func (s *search) number(n name) int32 {
	id, known := s.names[n]
	if !known {
		id = int32(len(s.names))
		s.names[n] = id
	}
	return id
}
