package plan

import "gopkg.in/yaml.v3"

// Need is the time that a change takes before work can go on.
type Need struct {
	For    PauseKind
	Time   Length
	Source string
}

const needExample = "- {for: weights, time: 8 counts}"

// need reads one entry of needs.
func (r *reader) need(n *yaml.Node, own bool) (Need, bool) {
	m, ok := r.mapping(n, "a need", needExample)
	if !ok {
		return Need{}, false
	}
	m.need("for", "for: weights")
	d := Need{
		For:    word(m, "for", Water, Weights, Floor),
		Time:   m.time("time: 8 counts, or 10s"),
		Source: m.source(own),
	}
	m.done()
	return d, d.For != "" && d.Time != (Length{})
}
