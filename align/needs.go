package align

import (
	"slices"
	"strings"

	"onphrase/plan"
)

// needs is what an item is done with and where.
type needs struct {
	kit    []string // sorted, without the mat
	weight string
	floor  bool

	anywhere bool // done standing and on the floor alike
	between  bool // leads from one to the other
}

const mat = "mat" // the equipment of moves done on the floor

// standing is equipment that stands in its place from the beginning: nobody
// picks it up or puts it down between two items.
var standing = []string{"step", "bench"}

// carried is the kit that is picked up and put down.
func (n needs) carried() []string {
	return slices.DeleteFunc(slices.Clone(n.kit), func(k string) bool { return slices.Contains(standing, k) })
}

// needs looks the item's moves up; false for a pause, which needs nothing.
func (l *placedClass) needs(it *plan.Item) (needs, bool) {
	var n needs
	var names []string
	switch w := it.Work.(type) {
	case plan.Set:
		names, n.weight = []string{w.Move}, w.Weight
	case plan.Interval:
		names, n.weight = []string{w.Move}, w.Weight
	case plan.Block:
		for _, s := range w.Moves {
			names = append(names, s.Move)
		}
	default:
		return n, false
	}
	for _, name := range names {
		m, _ := l.move(name)
		for _, e := range m.Equipment {
			if e == mat {
				n.floor = true
			} else if !slices.Contains(n.kit, e) {
				n.kit = append(n.kit, e)
			}
		}
	}
	if named := kitNamed(n.weight, n.carried()); named != "" {
		n.kit = append(slices.DeleteFunc(n.kit, func(k string) bool { return !slices.Contains(standing, k) }), named)
	}
	slices.Sort(n.kit)
	if !n.floor && len(n.kit) == 0 && n.weight == "" {
		n.anywhere = l.all(names, "stretch")
		n.between = l.all(names, "combination", "carry") // as a burpee, an inchworm, a bear crawl
	}
	return n, true
}

// all reports whether moves have only these patterns.
func (l *placedClass) all(names []string, patterns ...string) bool {
	for _, name := range names {
		if m, _ := l.move(name); !slices.Contains(patterns, m.Pattern) {
			return false
		}
	}
	return len(names) > 0
}

// The kit that the words of a weight name: "12 kg bar" is a barbell, whatever
// the move is usually done with.
var kitWords = map[string]string{
	"bar": "barbell", "bars": "barbell", "barbell": "barbell", "barbells": "barbell", "dumbbell": "dumbbells",
	"dumbbells":  "dumbbells",
	"kettlebell": "kettlebell", "kettlebells": "kettlebell", "bell": "kettlebell", "bells": "kettlebell",
	"plate": "plate", "plates": "plate",
	"band": "band", "bands": "band",
}

// holds reports whether one of the weights in hand is the one asked for: two of
// 6 kg are one too many, and putting that down takes no time of its own.
func (n needs) holds(weight string) bool {
	one, pair := strings.CutPrefix(strings.ReplaceAll(n.weight, "×", "x"), "2 x ")
	return n.weight == weight || pair && one == weight
}

// kitNamed is the kit that a weight as written names. Two weights are a pair of
// dumbbells where the move would have a bar or nothing.
func kitNamed(weight string, usual []string) string {
	words := strings.Fields(strings.ToLower(weight))
	for _, w := range words {
		if kit, ok := kitWords[strings.Trim(w, ",;()")]; ok {
			return kit
		}
	}
	pair := len(words) > 1 && words[0] == "2" && (words[1] == "x" || words[1] == "×")
	if pair && (len(usual) == 0 || slices.Contains(usual, "barbell")) {
		return "dumbbells"
	}
	return ""
}

// kit lists the equipment of the moves and the weights named for it, in the
// order in which the class needs them. A weight of which nothing says what it
// is, is the thing of that weight that another item names.
func (l *placedClass) kit() []Kit {
	all := []Kit{}
	add := func(item, weight string) {
		i := slices.IndexFunc(all, func(k Kit) bool { return k.Item == item })
		if i < 0 {
			i = len(all)
			all = append(all, Kit{Item: item, Weights: []string{}})
		}
		if weight != "" && !slices.Contains(all[i].Weights, weight) {
			all[i].Weights = append(all[i].Weights, weight)
		}
	}
	thing := map[string]string{} // by its weight
	l.eachNeed(func(n needs) {
		if _, known := thing[n.weight]; !known && n.weight != "" && len(n.carried()) > 0 {
			thing[n.weight] = n.carried()[0]
		}
	})
	l.eachNeed(func(n needs) {
		if n.weight != "" && len(n.carried()) == 0 {
			item, known := thing[n.weight]
			if !known {
				item = anyWeight
			}
			add(item, n.weight)
		}
		for _, item := range n.kit {
			if slices.Contains(standing, item) {
				add(item, "")
			} else {
				add(item, n.weight)
			}
		}
		if n.floor {
			add(mat, "")
		}
	})
	return all
}

func (l *placedClass) eachNeed(do func(n needs)) {
	for _, p := range l.parts {
		for i := range p.part.Items {
			n, _ := l.needs(&p.part.Items[i])
			do(n)
		}
	}
}

// anyWeight is the kit of a move that needs none by itself and is done with a
// weight.
const anyWeight = "weight"
