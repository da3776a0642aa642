package fit

import (
	"fmt"
	"slices"
	"strings"

	"onphrase/align"
	"onphrase/plan"
	"onphrase/plan/edit"
)

// option is an item as it could be instead.
type option struct {
	item   plan.Item
	tweaks []tweak // that make it so; none: as written
	waits  bool    // it now waits for a phrase, at a price a count
	price  int     // without the waiting
}

// tweak is one change of an item or of a part, before it is known where in
// the music it comes.
type tweak struct {
	kind   Kind
	detail string // what tells it from other changes of its kind and item
	say    string // for a person, without its figures
	price  int
	counts int // that the item takes more, or less below 0
	reps   int // more on each side, or fewer below 0
	edit   edit.Change
}

// setEntries bounds the rhythms that a set may come to.
const setEntries = 4

// options lists what may become of an item, the cheapest first, as it is
// written at the head.
func options(it plan.Item, t *align.Trial, p Prices) []option {
	all := []option{{item: it}}
	switch w := it.Work.(type) {
	case plan.Set:
		all = append(all, setOptions(it, w, t, p)...)
	case plan.Interval:
		all = append(all, timeOptions(it, w.Time, p, func(l plan.Length) plan.Work { w.Time = l; return w })...)
	case plan.Pause:
		all = append(all, timeOptions(it, w.Time, p, func(l plan.Length) plan.Work { w.Time = l; return w })...)
	}
	if mayWait(it) {
		for _, o := range slices.Clone(all) {
			o.item.On, o.waits = plan.OnPhrase, true
			o.price += p[OnPhrase]
			o.tweaks = append(slices.Clone(o.tweaks), tweak{
				kind: OnPhrase, say: it.Name + " is laid on a phrase", price: p[OnPhrase],
				edit: edit.SetOn{Item: written(it), On: plan.OnPhrase},
			})
			all = append(all, o)
		}
	}
	slices.SortStableFunc(all, func(a, b option) int { return a.price - b.price })
	return all
}

// mayWait reports whether an item may be laid on phrases that is not so now.
func mayWait(it plan.Item) bool {
	_, block := it.Work.(plan.Block)
	return !block && (it.On == plan.OnDefault || it.On == plan.OnEight)
}

// written is the place in the file where an item is written out.
func written(it plan.Item) plan.Pos {
	if it.Repeats != (plan.Pos{}) {
		return it.Repeats
	}
	return it.Pos
}

// list is the repetitions that a set could have, and the tweaks to them.
type list struct {
	reps   []plan.Reps
	tweaks []tweak
}

func (l list) price() int {
	sum := 0
	for _, m := range l.tweaks {
		sum += m.price
	}
	return sum
}

// setOptions lists other repetitions: where a rhythm is too fast a slower one
// in the same counts; and of each of those the ways to take more or fewer
// counts. Of several ways to the same repetitions the cheapest stays.
func setOptions(it plan.Item, s plan.Set, t *align.Trial, p Prices) []option {
	best := map[string]list{}
	keep := func(l list) {
		key := repsWords(l.reps)
		if old, known := best[key]; !known || l.price() < old.price() {
			best[key] = l
		}
	}
	sides := s.Sides.Times()
	for _, base := range slowed(it, s, t, p) {
		keep(base)
		for _, reps := range otherCounts(base.reps, p) {
			if counts(reps.reps)%eight != 0 && counts(s.Reps)%eight == 0 {
				continue // what fills eights goes on filling them
			}
			l := list{reps.reps, slices.Concat(base.tweaks, reps.tweaks)}
			last := &l.tweaks[len(l.tweaks)-1]
			last.say = fmt.Sprintf("%s: %s instead of %s", it.Name, repsWords(joined(l.reps)), repsWords(joined(base.reps)))
			last.detail, last.counts = repsWords(l.reps), sides*(counts(l.reps)-counts(base.reps))
			last.reps = repetitions(l.reps) - repetitions(base.reps)
			keep(l)
		}
	}
	delete(best, repsWords(s.Reps))
	var all []option
	for _, l := range best {
		o := option{item: it, tweaks: l.tweaks, price: l.price()}
		w := s
		w.Reps = joined(l.reps)
		o.item.Work = w
		o.tweaks[len(o.tweaks)-1].edit = edit.SetReps{Item: written(it), Was: s.Reps, Reps: w.Reps}
		all = append(all, o)
	}
	slices.SortFunc(all, func(a, b option) int {
		if a.price != b.price {
			return a.price - b.price
		}
		return strings.Compare(repsWords(a.item.Work.(plan.Set).Reps), repsWords(b.item.Work.(plan.Set).Reps))
	})
	return all
}

// joined writes neighbours of one rhythm as one entry.
func joined(reps []plan.Reps) []plan.Reps {
	var all []plan.Reps
	for _, r := range reps {
		if last := len(all) - 1; last >= 0 && all[last].Rhythm == r.Rhythm && all[last].N+r.N <= mostReps {
			all[last].N += r.N
			continue
		}
		all = append(all, r)
	}
	return all
}

// slowed lists the set as it is and with rhythms that are too fast slowed
// down, each by up to two steps.
func slowed(it plan.Item, s plan.Set, t *align.Trial, p Prices) []list {
	all := []list{{reps: s.Reps}}
	for i, r := range s.Reps {
		if !t.Graded(s, r.Rhythm) {
			continue
		}
		for _, base := range slices.Clone(all) {
			for step, slow := range align.Slower(r.Rhythm) {
				n := r.Counts() / slow.Counts()
				if n == 0 || step > 1 {
					break
				}
				l := list{reps: slices.Clone(base.reps)}
				l.reps[i] = plan.Reps{N: n, Rhythm: slow}
				l.tweaks = append(slices.Clone(base.tweaks), tweak{
					kind: Slower, detail: fmt.Sprint(i, slow), price: (step + 1) * p[Slower],
					say:    fmt.Sprintf("%s: %d x %s instead of %d x %s", it.Name, n, slow, r.N, r.Rhythm),
					counts: s.Sides.Times() * (n*slow.Counts() - r.Counts()), reps: n - r.N,
				})
				all = append(all, l)
			}
		}
	}
	return all
}

// mostReps is the most repetitions that a class file may ask for in one entry.
const mostReps = 500

// otherCounts lists the single changes that make repetitions take more or
// fewer counts.
func otherCounts(reps []plan.Reps, p Prices) []list {
	var all []list
	for i, r := range reps {
		for n := (r.N + 1) / 2; n <= min(2*r.N, mostReps); n++ {
			if n == r.N {
				continue
			}
			other := slices.Clone(reps)
			other[i].N = n
			all = append(all, list{other, []tweak{{kind: Reps, price: p.repsBy(r.N, n)}}})
		}
		all = append(all, shifted(reps, i, p)...)
	}
	return all
}

// shifted lists the ways to do some repetitions of entry i in the rhythm of
// its neighbour, or in the next slower one before it.
func shifted(reps []plan.Reps, i int, p Prices) []list {
	var all []list
	add := func(n int, other []plan.Reps) {
		all = append(all, list{other, []tweak{{kind: Split, price: p[Split] + n*p[Moved]}}})
	}
	r := reps[i]
	for n := 1; n < r.N; n++ {
		fewer := slices.Clone(reps)
		fewer[i].N -= n
		for _, j := range []int{i - 1, i + 1} {
			if j >= 0 && j < len(reps) {
				other := slices.Clone(fewer)
				other[j].N += n
				add(n, other)
			}
		}
		if slow, ok := longer(r.Rhythm); ok && len(reps) < setEntries && (i == 0 || reps[i-1].Rhythm != slow) {
			add(n, slices.Insert(slices.Clone(fewer), i, plan.Reps{N: n, Rhythm: slow}))
		}
	}
	return all
}

// longer is the next rhythm that takes more counts.
func longer(r plan.Rhythm) (plan.Rhythm, bool) {
	for _, slow := range align.Slower(r) {
		if slow.Counts() > r.Counts() {
			return slow, true
		}
	}
	return plan.Rhythm{}, false
}

// repsWords writes repetitions as the file has them.
func repsWords(reps []plan.Reps) string {
	var each []string
	for _, r := range reps {
		each = append(each, fmt.Sprintf("%d x %s", r.N, r.Rhythm))
	}
	return strings.Join(each, ", ")
}

func counts(reps []plan.Reps) int {
	n := 0
	for _, r := range reps {
		n += r.Counts()
	}
	return n
}

func repetitions(reps []plan.Reps) int {
	n := 0
	for _, r := range reps {
		n += r.N
	}
	return n
}

// timeGrain is what timed work changes by [s].
const timeGrain = 5

// timeOptions lists other lengths, from half of it to twice as long: whole
// eights, or seconds in steps of 5.
func timeOptions(it plan.Item, was plan.Length, p Prices, with func(plan.Length) plan.Work) []option {
	var all []option
	add := func(l plan.Length, steps, counts int) {
		o := option{item: it, price: p[Time] + steps*p[TimeStep]}
		o.item.Work = with(l)
		o.tweaks = []tweak{{
			kind: Time, detail: l.String(), price: o.price, counts: counts,
			say:  fmt.Sprintf("%s: %s instead of %s", it.Name, l, was),
			edit: edit.SetTime{Item: written(it), Time: l},
		}}
		all = append(all, o)
	}
	for n := eight; n <= 2*was.Counts; n += eight {
		if 2*n >= was.Counts && n != was.Counts {
			add(plan.Length{Counts: n}, (abs(n-was.Counts)+eight-1)/eight, n-was.Counts)
		}
	}
	for s := timeGrain; float64(s) <= 2*was.Seconds; s += timeGrain {
		if d := float64(s) - was.Seconds; 2*float64(s) >= was.Seconds && d != 0 {
			add(plan.Length{Seconds: float64(s)}, (abs(int(d))+timeGrain-1)/timeGrain, 0)
		}
	}
	return all
}
