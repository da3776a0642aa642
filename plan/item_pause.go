package plan

// Pause is water, a change of weights, or the way to the floor.
type Pause struct {
	Time Length
}

func (Pause) work() {}

func readPause(m *mapping, _ *Item, _ *Catalog) Work {
	return Pause{Time: m.time("time: 30s")}
}

// time reads how long an interval or a pause lasts.
func (m *mapping) time(example string) Length {
	return read(m, "time", m.need("time", example), parseLength)
}
