package plan

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// parseCatalog reads a catalogue: the version line, limits, and moves.
func parseCatalog(src []byte) (*Catalog, []Problem) {
	c := &Catalog{Limits: map[string]Limit{}}
	r, root := open(src)
	if root == nil {
		return c, r.sorted()
	}
	m, ok := r.top(root, "a catalogue", "catalog.yaml")
	if !ok {
		return c, r.sorted()
	}
	for _, n := range m.needList("limits", "limits: and below it - class: squat") {
		l, ok := r.limit(n)
		if !ok {
			continue
		}
		if _, twice := c.Limits[l.Class]; twice {
			r.problem(n, l.Class+" has two limits", "keep one of them")
		}
		c.Limits[l.Class] = l
	}
	c.Moves = r.moves(m.needList("moves", moveExample), c)
	m.done()
	return c, r.sorted()
}

// limit reads one entry of limits.
func (r *reader) limit(n *yaml.Node) (Limit, bool) {
	m, ok := r.mapping(n, "a limit", "- class: squat, and below it fine, too fast, evidence, source")
	if !ok {
		return Limit{}, false
	}
	l := Limit{
		Class:    m.needText("class", "class: squat"),
		Path:     read(m, "path", m.take("path"), parseMetres),
		Fine:     read(m, "fine", m.need("fine", "fine: 0.80s"), parsePhase),
		TooFast:  read(m, "too fast", m.need("too fast", "too fast: 0.55s"), parsePhase),
		TooSlow:  read(m, "too slow", m.take("too slow"), parsePhase),
		Evidence: evidence(m),
		Source:   m.needText("source", "source: who found it, and where"),
	}
	if l.Fine > 0 && l.TooFast > l.Fine {
		r.problem(n, fmt.Sprintf("too fast below %gs but fine from %gs", l.TooFast, l.Fine), "too fast is the shorter one")
	}
	m.done()
	return l, l.Class != ""
}

// evidence reads how well a limit is founded, which must be said.
func evidence(m *mapping) Evidence {
	m.need("evidence", "evidence: assumption")
	return word(m, "evidence", Published, CommonPractice, Assumption)
}

// parsePhase reads the seconds of one phase of a repetition [s].
func parsePhase(s string) (float64, *fault) {
	l, f := parseLength(s)
	if f != nil || l.Seconds == 0 {
		return 0, &fault{msg: shown(s) + " is no number of seconds", hint: "0.80s"}
	}
	return l.Seconds, nil
}

// parseMetres reads the way of a load [m].
func parseMetres(s string) (float64, *fault) {
	figure, ok := strings.CutSuffix(strings.TrimSpace(s), "m")
	figure = strings.TrimSpace(figure)
	if !ok || !decimal.MatchString(figure) || number(figure) > 3 {
		return 0, &fault{msg: shown(s) + " is no path of a movement", hint: "metres, like 0.40m"}
	}
	return number(figure), nil
}
