package fit

import (
	"container/heap"
	"slices"

	"onphrase/align"
)

// mostJudged bounds how many whole classes are held against all checks.
const mostJudged = 40

// classes puts the ways through the parts together, the cheapest first, until
// no other can be among the best three.
func (j *Job) classes(before *align.CountMap, parts [][]way) ([]Plan, error) {
	q := combinations{newCombination(parts, make([]int, len(parts)))}
	seen := map[string]bool{}
	var plans []Plan
	var failed error
	for judged := 0; len(q) > 0 && judged < mostJudged; {
		c := heap.Pop(&q).(combination)
		if len(plans) >= plansShown && plans[plansShown-1].Cost <= c.cost {
			break
		}
		if seen[c.key()] {
			continue
		}
		seen[c.key()] = true
		judged++
		p, err := j.judge(before, c.changes(parts))
		if err != nil {
			failed = err
		} else {
			plans = append(plans, p)
			slices.SortStableFunc(plans, func(a, b Plan) int { return a.Cost - b.Cost })
		}
		for i := range parts {
			if c.way[i]+1 < len(parts[i]) {
				next := slices.Clone(c.way)
				next[i]++
				heap.Push(&q, newCombination(parts, next))
			}
		}
	}
	asItIs, err := j.judge(before, nil)
	if len(plans) == 0 && failed != nil {
		return nil, failed
	}
	return worthwhile(plans, asItIs), err
}

// worthwhile keeps the best three of the plans that are better than to leave
// the class as it is; where there are none, to leave it.
func worthwhile(plans []Plan, asItIs Plan) []Plan {
	worse := slices.IndexFunc(plans, func(p Plan) bool { return len(p.Changes) == 0 || p.Cost >= asItIs.Cost })
	if worse >= 0 {
		plans = plans[:worse]
	}
	if len(plans) == 0 {
		return []Plan{asItIs}
	}
	return plans[:min(len(plans), plansShown)]
}

// combination is one way through every part.
type combination struct {
	way  []int
	cost int
}

func newCombination(parts [][]way, ways []int) combination {
	c := combination{way: ways}
	for i, w := range ways {
		c.cost += parts[i][w].cost
	}
	return c
}

func (c combination) key() string {
	var b []byte
	for _, w := range c.way {
		b = append(b, byte(w))
	}
	return string(b)
}

func (c combination) changes(parts [][]way) []Change {
	var all []Change
	for i, w := range c.way {
		all = append(all, parts[i][w].changes...)
	}
	return all
}

// combinations holds them, the cheapest first.
type combinations []combination

func (q combinations) Len() int           { return len(q) }
func (q combinations) Less(i, j int) bool { return q[i].cost < q[j].cost }
func (q combinations) Swap(i, j int)      { q[i], q[j] = q[j], q[i] }
func (q *combinations) Push(x any)        { *q = append(*q, x.(combination)) }
func (q *combinations) Pop() any {
	old := *q
	c := old[len(old)-1]
	*q = old[:len(old)-1]
	return c
}
