package plan

// Interval is timed work.
type Interval struct {
	Move string
	Time Length
}

func (Interval) work() {}

func readInterval(m *mapping, it *Item, c *Catalog) Work {
	m.knownMove("interval", it.Name, c, "counts: 2")
	return Interval{Move: it.Name, Time: m.time("time: 30s")}
}
