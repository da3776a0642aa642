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
	reached  map[key][][]int32 // moves of the cheapest ways to it
	names    map[name]int32
	complete [][]int32
	tried    int
}

// waysKept is how many ways to one spot are followed: the three best plans,
// and one in reserve.
const waysKept = 4

// mostTried bounds how many items are laid for one part: a few seconds.
const mostTried = 400_000

// node is a part decided up to some item.
type node struct {
	before *node
	step   step
	cost   int
	world  int
	next   int  // slot to lay
	held   bool // a hold was laid before it
	late   bool // the slot after it is laid already
	spot   align.Spot
	said   string // decisions that hold for slots to come
	moves  []int32
	open   []step // what may be done next, the cheapest first
	tried  int    // how many of them have been
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
	spot        align.SpotKey
	said        string
}

// name tells one move of a part from another.
type name struct {
	kind   Kind
	on     int
	detail string
}

func newSearch(r *room) *search {
	s := &search{room: r, reached: map[key][][]int32{}, names: map[name]int32{}}
	root := &node{next: -1, open: s.beginnings()}
	heap.Push(&s.queue, root)
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
// Ways that contain another one already found are passed over.
func (s *search) found() *node {
	for len(s.queue) > 0 && s.tried < mostTried {
		n := heap.Pop(&s.queue).(*node)
		if n.tried == 0 && !s.admit(n) {
			continue
		}
		if n.next == len(s.slots) {
			if contains(s.complete, n.moves) {
				continue
			}
			s.complete = append(s.complete, n.moves)
			return n
		}
		if n.tried == 0 && n.next >= 0 {
			n.open = s.steps(n)
		}
		if n.tried < len(n.open) {
			s.tried++
			if child := s.do(n, n.open[n.tried]); child != nil {
				heap.Push(&s.queue, child)
			}
			if n.tried++; n.tried < len(n.open) {
				heap.Push(&s.queue, n)
			}
		}
	}
	return nil
}

// admit notes a way to a spot unless better ones are known.
func (s *search) admit(n *node) bool {
	if n.next < 0 {
		return true
	}
	k := key{n.world, n.next, n.held, n.late, n.spot.Key(), n.said}
	ways := s.reached[k]
	if len(ways) >= waysKept || contains(ways, n.moves) {
		return false
	}
	s.reached[k] = append(ways, n.moves)
	return true
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

// do takes a step; nil when the part cannot be laid that way.
func (s *search) do(n *node, st step) *node {
	child := &node{before: n, step: st, cost: n.cost + st.price, world: n.world, next: n.next, late: n.late, spot: n.spot, said: n.said}
	trial := s.worlds[n.world].trial
	var found align.Tally
	names := s.namesOf(st)
	switch {
	case st.begin:
		child.world, child.next = st.world, 0
		child.spot, found = s.worlds[st.world].trial.Begin(st.start)
	case st.hold > 0:
		child.held = true
		child.spot, found = trial.Next(n.spot, holdItem(st))
	default:
		o := &s.slots[st.slot].options[st.option]
		child.spot, found = trial.Next(n.spot, s.slots[st.slot].items[st.option])
		if o.waits && !st.forced {
			child.cost += s.prices.held(child.spot.Waited)
		}
		switch {
		case st.swap:
			child.late = true
		case n.late:
			child.next, child.late = n.next+2, false
		default:
			child.next++
		}
	}
	child.cost += found.Fix*s.prices[Fix] + found.Watch*s.prices[Watch]
	child.moves = with(n.moves, names)
	child.said = s.decided(n, child)
	return child
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
