package plan

import "strings"

// Pause is water, a change of weights, the way to the floor, or rest.
type Pause struct {
	Time Length
	Kind PauseKind
}

// PauseKind says what a pause is for.
type PauseKind string

const (
	Water   PauseKind = "water"
	Weights PauseKind = "weights" // picked up, changed or put down
	Floor   PauseKind = "floor"   // on to it or up from it
	Rest    PauseKind = "rest"
)

func (Pause) work() {}

func readPause(m *mapping, it *Item, _ *Catalog) Work {
	p := Pause{Time: m.time("time: 30s"), Kind: word(m, "for", Water, Weights, Floor, Rest)}
	if p.Kind == "" {
		p.Kind = pauseFor(it.Name)
	}
	return p
}

// time reads how long an interval or a pause lasts.
func (m *mapping) time(example string) Length {
	return read(m, "time", m.need("time", example), parseLength)
}

// pauseWords are words in the name of a pause that say what it is for.
var pauseWords = []struct {
	word string
	kind PauseKind
}{
	{"water", Water}, {"drink", Water}, {"floor", Floor}, {"mat", Floor}, {"lie", Floor}, {"stand", Floor},
	{"weight", Weights}, {"bar", Weights}, {"barbell", Weights}, {"dumbbell", Weights}, {"kettlebell", Weights},
	{"plate", Weights}, {"band", Weights}, {"equipment", Weights},
}

// pauseFor guesses from its name what a pause is for.
func pauseFor(name string) PauseKind {
	said := spoken(name)
	for _, w := range pauseWords {
		if strings.Contains(said, " "+w.word+" ") {
			return w.kind
		}
	}
	return Rest
}
