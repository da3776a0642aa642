package plan

import "gopkg.in/yaml.v3"

// Need is the time that a change takes before work can go on.
type Need struct {
	For    PauseKind
	Time   float64 // [s]
	Source string
}

const needExample = "- {for: weights, time: 8s}"

// need reads one entry of needs.
func (r *reader) need(n *yaml.Node, own bool) (Need, bool) {
	m, ok := r.mapping(n, "a need", needExample)
	if !ok {
		return Need{}, false
	}
	m.need("for", "for: weights")
	d := Need{
		For:    word(m, "for", Water, Weights, Floor),
		Time:   read(m, "time", m.need("time", "time: 8s"), parsePhase),
		Source: m.source(own),
	}
	m.done()
	return d, d.For != "" && d.Time > 0
}
