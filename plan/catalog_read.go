package plan

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// ParseCatalog reads a user's own file over the moves, limits, bands and needs
// known: what it names is hers, the rest stays.
func ParseCatalog(file string, src []byte, known *Catalog) (*Catalog, []Problem) {
	return forgiving(src, func(src []byte) (*Catalog, []Problem) { return readCatalog(file, src, known, true) })
}

// readCatalog reads limits, bands, needs and moves. The built-in catalogue
// must have all of them and name a source for every figure; a user's own file
// need not.
func readCatalog(file string, src []byte, known *Catalog, own bool) (*Catalog, []Problem) {
	what := "a catalogue"
	if own {
		what = "a moves file"
	}
	r, root := open(src)
	if root == nil {
		return known, r.sorted()
	}
	m, ok := r.top(root, what, file)
	if !ok {
		return known, r.sorted()
	}
	c := &Catalog{
		Limits: overlay(known.Limits, "limit", r, m.section("limits", limitExample, own), own,
			func(n *yaml.Node) (string, Limit, bool) {
				l, ok := r.limit(n, known, own)
				return l.Class, l, ok
			}),
		Bands: overlay(known.Bands, "band", r, m.section("bands", bandExample, own), own,
			func(n *yaml.Node) (PartKind, Band, bool) {
				b, ok := r.band(n, known, own)
				return b.Kind, b, ok
			}),
		Needs: overlay(known.Needs, "need", r, m.section("needs", needExample, own), own,
			func(n *yaml.Node) (PauseKind, Need, bool) {
				d, ok := r.need(n, own)
				return d.For, d, ok
			}),
	}
	c.Moves = slices.Concat(known.Moves, r.moves(m.section("moves", moveExample, own), c, own))
	if own && len(m.pairs) == 1 && m.has("onphrase") {
		r.problem(root, "a moves file has nothing in it", "moves, limits, bands or needs")
	}
	m.done()
	return c, r.sorted()
}

// section returns the entries of one list of a catalogue, which a user's own
// file may leave out.
func (m *mapping) section(key, example string, own bool) []*yaml.Node {
	if own {
		return m.list(key, key+": and below it "+example)
	}
	return m.needList(key, key+": and below it "+example)
}

// overlay reads entries over those known; each key may be written once.
func overlay[K ~string, V any](known map[K]V, what string, r *reader, list []*yaml.Node, own bool,
	read func(*yaml.Node) (K, V, bool)) map[K]V {
	all := map[K]V{}
	maps.Copy(all, known)
	seen := map[K]bool{}
	for _, n := range list {
		key, v, ok := read(n)
		if !ok {
			continue
		}
		if seen[key] {
			r.problem(n, fmt.Sprintf("%s has two %ss", short(string(key)), what), "keep one of them")
		}
		seen[key] = true
		all[key] = v
	}
	return all
}

const limitExample = "- {class: squat, fine: 0.80s, too fast: 0.55s}"

// limit reads one entry of limits. What is not written of a known class of
// movement stays: the path, the limits of one way alone.
func (r *reader) limit(n *yaml.Node, c *Catalog, own bool) (Limit, bool) {
	m, ok := r.mapping(n, "a limit", limitExample)
	if !ok {
		return Limit{}, false
	}
	l := Limit{
		Class:    m.needText("class", "class: squat"),
		Path:     read(m, "path", m.take("path"), parseMetres),
		Fine:     read(m, "fine", m.need("fine", "fine: 0.80s"), parsePhase),
		TooFast:  read(m, "too fast", m.need("too fast", "too fast: 0.55s"), parsePhase),
		TooSlow:  read(m, "too slow", m.take("too slow"), parsePhase),
		Evidence: m.evidence(own),
		Source:   m.source(own),

		Down:      m.way("down", own),
		Up:        m.way("up", own),
		Ballistic: m.flag("ballistic"),
	}
	if was, known := c.Limits[l.Class]; known && own {
		l.Path = cmp.Or(l.Path, was.Path)
		l.TooSlow = cmp.Or(l.TooSlow, was.TooSlow)
		l.Down, l.Up = cmp.Or(l.Down, was.Down), cmp.Or(l.Up, was.Up)
		l.Ballistic = l.Ballistic || was.Ballistic && !m.has("ballistic")
	}
	if l.Fine > 0 && l.TooFast > l.Fine {
		r.problem(n, fmt.Sprintf("too fast below %gs but fine from %gs", l.TooFast, l.Fine), "too fast is the shorter one")
	}
	m.done()
	return l, l.Class != ""
}

// way reads the limit of one way that stands beside a slow one.
func (m *mapping) way(key string, own bool) WayLimit {
	n := m.take(key)
	if n == nil {
		return WayLimit{}
	}
	w, ok := m.r.mapping(n, "the limit of one way", key+": {fine: 0.45s}")
	if !ok {
		return WayLimit{}
	}
	l := WayLimit{
		Fine:     read(w, "fine", w.need("fine", "fine: 0.45s"), parsePhase),
		Evidence: w.evidence(own),
		Source:   w.source(own),
	}
	w.done()
	return l
}

// evidence reads how well a limit is founded, which the built-in catalogue
// must say.
func (m *mapping) evidence(own bool) Evidence {
	if own && !m.has("evidence") {
		m.ask("evidence")
		return Own
	}
	m.need("evidence", "evidence: assumption")
	return word(m, "evidence", Published, CommonPractice, Assumption)
}

// parsePhase reads the seconds of one phase of a repetition [s].
func parsePhase(s string) (float64, *fault) {
	l, f := parseLength(s)
	if f == nil && l.Seconds > 0 {
		return l.Seconds, nil
	}
	hint := "0.80s"
	if bare := strings.TrimSpace(s); decimal.MatchString(bare) && number(bare) > 0 {
		hint = bare + "s"
	}
	return 0, &fault{msg: shown(s) + " is no number of seconds", hint: hint}
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
