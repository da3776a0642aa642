package plan

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// Version is the version of the class file that Parse reads.
const Version = "1"

const versionHint = "a class file begins with the line onphrase: 1"

// Parse reads a class file that names the built-in moves and its own. It
// returns every problem at once, in the order of the file, and the class as
// far as it was understood, never nil. The file is not opened; its name only
// stands in messages.
func Parse(file string, src []byte) (*Class, []Problem) { return ParseWith(file, src, Builtin()) }

// ParseWith is Parse with the moves known beforehand, as from a user's moves
// file.
func ParseWith(file string, src []byte, known *Catalog) (*Class, []Problem) {
	return forgiving(src, func(src []byte) (*Class, []Problem) { return parseClass(file, src, known) })
}

func parseClass(file string, src []byte, known *Catalog) (*Class, []Problem) {
	r, root := open(src)
	c := &Class{Pos: Pos{1, 1}, Catalog: known}
	if root == nil {
		return c, r.sorted()
	}
	m, ok := r.top(root, "a class file", file)
	if !ok {
		return c, r.sorted()
	}
	c.Catalog = known.With(r.moves(m.list("moves", moveExample), known, true))
	c.Name = m.needText("class", "class: Harbour Strong 45")
	c.Slot = read(m, "slot", m.take("slot"), parseSlot)
	c.Music, c.MusicPos = m.path("music"), at(m.value("music"))
	c.Facing = m.facing()
	c.Known = m.stands()
	for _, n := range m.needList("parts", "parts: and below it - part: Warm-up") {
		if p, ok := r.part(n, c.Catalog); ok {
			c.Parts = append(c.Parts, p)
		}
	}
	m.done()
	return c, r.sorted()
}

// facing reads where the instructor looks.
func (m *mapping) facing() Facing {
	const front = "front" // FacingFront, written out
	if f := word(m, "facing", front, FacingClass); f != front {
		return f
	}
	return FacingFront
}

// top opens the mapping that a file consists of and checks its version, which
// must come first so that a later version is recognised before anything else.
func (r *reader) top(root *yaml.Node, what, file string) (*mapping, bool) {
	if root.Kind != yaml.MappingNode {
		r.problem(root, fmt.Sprintf("%s is not %s: it begins with %s", file, what, form(root)), versionHint)
		return nil, false
	}
	m, _ := r.mapping(root, what, "")
	v := m.need("onphrase", "onphrase: 1")
	switch {
	case v == nil:
	case v.Kind != yaml.ScalarNode:
		r.problem(v, "onphrase is the version of the file, not "+form(v), "onphrase: 1")
	case v.Value != Version:
		r.problem(v, fmt.Sprintf("version %s of the class file is not known", shown(v.Value)),
			"this program reads onphrase: 1; a newer file needs a newer program")
	case v.Style != 0:
		r.problem(v, `the version is a number, not text in quotes`, "onphrase: 1")
	case m.pairs[0].value != v:
		r.problem(m.pairs[0].key, short(m.pairs[0].key.Value)+" stands before the version", versionHint)
	}
	return m, true
}
