package fit

import "container/heap"

// narrow goes through a part item by item and follows only so many ways past
// each, the cheapest ones: a good way through a part that has too many to find
// the best.
//
// Ref: beam search; Lowerre 1976, The Harpy speech recognition system, ch. 2
// (from memory).
func (s *search) narrow(followed int) *node {
	layers := make([]queue, len(s.entries)+2) // by the entry to lay; the first: nothing begun
	layers[0], s.queue = s.queue, nil
	for at := range layers {
		layer := &layers[at]
		for met := 0; layer.Len() > 0 && met < followed; {
			n := heap.Pop(layer).(*node)
			if n.at == nil && !s.meet(n) {
				continue
			}
			if n.next == len(s.entries) {
				return n
			}
			met++
			for n.tried < len(n.at.open) {
				if child := s.do(n); s.wanted(child) {
					heap.Push(&layers[child.next+1], child)
				}
			}
		}
	}
	return nil
}
