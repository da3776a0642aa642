package plan

import (
	"fmt"
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"
)

// Band is the tempo that suits a kind of part [BPM]. Inside is what most
// published figures agree on, outer what any of them allows.
type Band struct {
	Kind   PartKind
	Inside TempoRange
	Outer  TempoRange
	Source string
}

// TempoRange is from one tempo to another [BPM]; Low is 0 when there is none.
type TempoRange struct{ Low, High float64 }

// Has reports whether a tempo lies in the range.
func (t TempoRange) Has(bpm float64) bool { return bpm >= t.Low && bpm <= t.High }

// String writes the range as a file has it: "122-130", "up to 100".
func (t TempoRange) String() string {
	if t.Low == 0 {
		return fmt.Sprintf("up to %g", t.High)
	}
	return fmt.Sprintf("%g-%g", t.Low, t.High)
}

const bandExample = "- {kind: strength, inside: 122-130, outer: 100-132}"

// band reads one entry of bands. Where there is a band already, what is not
// written stays.
func (r *reader) band(n *yaml.Node, c *Catalog, own bool) (Band, bool) {
	m, ok := r.mapping(n, "a band", bandExample)
	if !ok {
		return Band{}, false
	}
	m.need("kind", "kind: strength")
	kind := word(m, "kind", WarmUp, Cardio, Strength, Core, CoolDown, Stretch)
	b, known := c.Bands[kind]
	b.Kind = kind
	inside := read(m, "inside", m.need("inside", "inside: 122-130"), parseTempoRange)
	outer := read(m, "outer", m.take("outer"), parseTempoRange)
	switch {
	case outer.High > 0:
	case known && own: // a narrower band inside the old one, or a wider one that moves it
		outer = TempoRange{min(b.Outer.Low, inside.Low), max(b.Outer.High, inside.High)}
	default:
		outer = inside
	}
	if inside.High > 0 && (outer.Low > inside.Low || outer.High < inside.High) {
		r.problem(n, fmt.Sprintf("the outer band %s does not hold the inner one, %s", outer, inside),
			"outer is the wider one")
	}
	b.Inside, b.Outer, b.Source = inside, outer, m.source(own)
	m.done()
	return b, kind != "" && inside.High > 0
}

// ownSource is the source of a figure that the user has set without naming
// another.
const ownSource = "set by yourself"

// source reads where figures come from, which the built-in catalogue must say.
func (m *mapping) source(own bool) string {
	if own && !m.has("source") {
		m.ask("source")
		return ownSource
	}
	return m.needText("source", "source: who found it, and where")
}

var (
	fromTo = regexp.MustCompile(`^([0-9]{2,3}(?:\.[0-9]+)?) *- *([0-9]{2,3}(?:\.[0-9]+)?)$`)
	upTo   = regexp.MustCompile(`^(?:up to|below|at most) *([0-9]{2,3}(?:\.[0-9]+)?)$`)
)

// parseTempoRange reads "122-130" or "up to 100" [BPM].
func parseTempoRange(s string) (TempoRange, *fault) {
	s = strings.TrimSpace(s)
	var t TempoRange
	if f := fromTo.FindStringSubmatch(s); f != nil {
		t = TempoRange{number(f[1]), number(f[2])}
	} else if f := upTo.FindStringSubmatch(s); f != nil {
		t.High = number(f[1])
	} else {
		return t, &fault{msg: shown(s) + " is no range of tempo", hint: "beats per minute, like 122-130 or up to 100"}
	}
	switch {
	case t.Low > t.High:
		return TempoRange{}, &fault{msg: shown(s) + " runs backwards", hint: fmt.Sprintf("%g-%g?", t.High, t.Low)}
	case t.High < tempoLow || t.High > tempoHigh || t.Low != 0 && t.Low < tempoLow:
		return TempoRange{}, &fault{msg: shown(s) + " is out of range",
			hint: fmt.Sprintf("from %d to %d", tempoLow, tempoHigh)}
	}
	return t, nil
}
