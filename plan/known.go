package plan

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"onphrase/plan/say"
)

// Known is a finding that the instructor has seen and stands by, for an item,
// a part or the whole class.
type Known struct {
	Pos    Pos
	Code   string // of the finding, like rhythm-too-fast
	Reason string // her own words; empty when not given
}

const knownExample = `known: rhythm-too-fast, or known: {rhythm-too-fast: "light bar, they know it"}`

// stands reads what she stands by: a code, a list of codes, or codes with
// reasons.
func (m *mapping) stands() []Known {
	n := m.take("known")
	if n == nil {
		return nil
	}
	var all []Known
	switch n.Kind {
	case yaml.SequenceNode:
		for _, entry := range m.items("known", n, "known: [rhythm-too-fast, tempo-jump]") {
			all = m.r.addKnown(all, entry, nil)
		}
	case yaml.MappingNode:
		with, _ := m.r.mapping(n, "known", knownExample)
		if len(with.pairs) == 0 {
			m.r.problem(n, "known names nothing", "like "+knownExample)
		}
		for _, p := range with.pairs {
			all = m.r.addKnown(all, p.key, p.value)
		}
	default:
		all = m.r.addKnown(all, n, nil)
	}
	return all
}

var findingCode = regexp.MustCompile(`^[a-z]+(?:-[a-z]+)*$`)

// addKnown reads one code, and its reason where there is one.
func (r *reader) addKnown(all []Known, code, reason *yaml.Node) []Known {
	s, ok := r.scalar("known", code)
	if !ok {
		return all
	}
	k := Known{Pos: at(code), Code: strings.ToLower(strings.Join(strings.Fields(s.text), "-"))}
	if !findingCode.MatchString(k.Code) {
		hint := "the code of a finding, like rhythm-too-fast"
		if strings.Contains(k.Code, ",") {
			hint = fmt.Sprintf("known: [%s]?", short(s.text))
		}
		r.problem(code, "known: "+shown(s.text)+" is no finding", hint)
		return all
	}
	if slices.ContainsFunc(all, func(was Known) bool { return was.Code == k.Code }) {
		r.problem(code, "known: "+k.Code+" is named twice", "keep one of them")
		return all
	}
	if reason != nil && !empty(reason) {
		if s, ok := r.scalar("the reason of "+k.Code, reason); ok {
			k.Reason = r.line("the reason of "+k.Code, s)
		}
	}
	return append(all, k)
}

// Stands finds what she has said of a finding: of the item first, then of its
// part, then of the class. Part and item may be nil.
func (c *Class) Stands(code string, p *Part, it *Item) (Known, bool) {
	var said []Known
	if it != nil {
		said = append(said, it.Known...)
	}
	if p != nil {
		said = append(said, p.Known...)
	}
	for _, k := range append(said, c.Known...) {
		if k.Code == code {
			return k, true
		}
	}
	return Known{}, false
}

// UnknownFindings returns a problem for every code under known that is not
// among those of the checks, with the nearest as hint, each place once.
func (c *Class) UnknownFindings(codes []string) []Problem {
	all := slices.Clone(c.Known)
	for _, p := range c.Parts {
		all = append(all, p.Known...)
		for _, it := range p.Items {
			all = append(all, it.Known...)
		}
	}
	var unknown []Problem
	seen := map[Pos]bool{}
	for _, k := range all {
		if seen[k.Pos] || slices.Contains(codes, k.Code) {
			continue
		}
		seen[k.Pos] = true
		hint := "'onphrase check --explain CODE' explains a finding"
		if near, ok := say.Nearest(k.Code, codes); ok {
			hint = near + "?"
		}
		unknown = append(unknown, Problem{k.Pos, "known: no finding is called " + shown(k.Code), hint})
	}
	return unknown
}
