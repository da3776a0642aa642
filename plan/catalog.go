package plan

import (
	_ "embed"
	"maps"
	"slices"
	"strings"
	"sync"

	"onphrase/plan/say"
)

// Catalog is the moves known, the limits of their classes of movement, and
// the figures a class is held against. It must not be changed once it is in
// use.
type Catalog struct {
	Moves  []Move
	Limits map[string]Limit // by class of movement
	Bands  map[PartKind]Band
	Needs  map[PauseKind]Need

	once   sync.Once
	index  map[string]int // into Moves, by nameKey of every name
	names  []string       // every name and other name
	spoken []string       // their nameWords, with a space at both ends
}

//go:embed catalog.yaml
var builtinSource []byte

var builtin = sync.OnceValue(func() *Catalog {
	c, problems := readCatalog("catalog.yaml", builtinSource, &Catalog{}, false)
	if len(problems) > 0 {
		panic(problems[0].In("catalog.yaml")) // a test reads it too
	}
	return c
})

// Builtin returns the catalogue that comes with the program.
func Builtin() *Catalog { return builtin() }

// With returns the catalogue with moves added; one of a known name replaces
// the known one.
func (c *Catalog) With(moves []Move) *Catalog {
	if len(moves) == 0 {
		return c
	}
	return &Catalog{Moves: slices.Concat(c.Moves, moves), Limits: c.Limits, Bands: c.Bands, Needs: c.Needs}
}

// Find returns the move of a name or other name, whatever its case, hyphens,
// spaces or simple plural.
func (c *Catalog) Find(name string) (Move, bool) {
	c.once.Do(c.build)
	i, ok := c.index[nameKey(name)]
	if !ok {
		return Move{}, false
	}
	return c.Moves[i], true
}

func (c *Catalog) build() {
	c.index = map[string]int{}
	for i, m := range c.Moves {
		for _, name := range m.Also {
			c.index[nameKey(name)] = i
		}
	}
	for i, m := range c.Moves { // a name beats another move's other name
		c.index[nameKey(m.Name)] = i
		for _, name := range append([]string{m.Name}, m.Also...) {
			c.names = append(c.names, name)
			c.spoken = append(c.spoken, spoken(name))
		}
	}
}

func spoken(name string) string { return " " + strings.Join(nameWords(name), " ") + " " }

// Nearest returns the name in the catalogue that an unknown one most likely
// meant: the fewest slips, else the longest name contained in it.
func (c *Catalog) Nearest(name string) (string, bool) {
	c.once.Do(c.build)
	if near, ok := say.Nearest(name, c.names); ok {
		return near, true
	}
	typed, best := spoken(name), ""
	for i, n := range c.names {
		if len(n) > len(best) && strings.Contains(typed, c.spoken[i]) {
			best = n
		}
	}
	return best, best != ""
}

// LimitFor returns the limit of a move's class of movement, at full range;
// false for a move without one.
func (c *Catalog) LimitFor(m Move) (Limit, bool) {
	l, ok := c.Limits[m.Class]
	return l, ok
}

// Classes lists the classes of movement, sorted.
func (c *Catalog) Classes() []string { return slices.Sorted(maps.Keys(c.Limits)) }
