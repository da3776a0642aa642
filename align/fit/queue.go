package fit

// queue holds nodes by what their next step comes to, the cheapest first; of
// equal ones the one that has got furthest.
type queue []*node

// due is the cost of the cheapest way through the node not tried yet.
func (n *node) due() int {
	if n.at != nil && n.tried < len(n.at.open) {
		return n.cost + n.at.open[n.tried].price
	}
	return n.cost
}

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	if a, b := q[i].due(), q[j].due(); a != b {
		return a < b
	}
	return q[i].next > q[j].next
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(*node)) }
func (q *queue) Pop() any {
	old := *q
	n := old[len(old)-1]
	*q = old[:len(old)-1]
	return n
}
