package fit

import (
	"cmp"
	"math"
	"slices"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/edit"
	"onphrase/plan/say"
)

// entry is an item of a part, at its place in the order done.
type entry struct {
	item    *plan.Item
	options []option
	items   []*plan.Item // of the options; every entry has pointers of its own
	written int          // which decision its option is: one for all that are written in one place
	place   int          // which decision the hold before it is; none: noHold
	swaps   bool         // with the next
}

// noHold marks an entry before which no hold can be written.
const noHold = -1

// choices is all that a part may become.
type choices struct {
	class    *plan.Class
	part     *plan.Part
	prices   Prices
	variants []variant
	entries  []entry
	shared   []bool // of every decision: it holds for several entries
	lastAt   []int  // of every decision: the last entry it holds for
	laid     map[placement]outcome
}

// variant is a part at one tempo.
type variant struct {
	trial  *align.Trial
	tweaks []tweak // to that tempo; none: as it is written
	price  int
	off    float64 // how far from the recording, as a share of it
}

// newRoom lists the choices in a part; false when it has no music to lay
// anything on. Of what is written in another part, or stands there too,
// nothing is changed from here.
func newChoices(c *plan.Class, n int, tracks map[string]beat.Track, p Prices) (*choices, bool) {
	r := &choices{class: c, part: &c.Parts[n], prices: p, laid: map[placement]outcome{}}
	trial, ok := align.NewTrial(c, r.part, tracks)
	if !ok {
		return nil, false
	}
	r.variants = append(r.variants, variant{trial: trial})
	r.tempos(tracks)
	elsewhere := map[plan.Pos]bool{}
	for i := range c.Parts {
		for _, it := range c.Parts[i].Items {
			if i != n {
				elsewhere[written(it)] = true
			}
		}
	}
	decisions := map[plan.Pos]int{}
	places := map[plan.Pos]int{}
	for k := range r.part.Items {
		it := r.part.Items[k]
		s := entry{item: &it, options: []option{{item: it}}, place: noHold}
		frozen := inSeries(it) || elsewhere[written(it)]
		if !frozen {
			s.options = options(it, trial, p)
		}
		for i := range s.options {
			own := s.options[i].item
			s.items = append(s.items, &own)
		}
		s.written = r.decision(decisions, written(it), k)
		if r.mayHold(k) && !frozen {
			s.place = r.decision(places, it.Pos, k)
		}
		r.entries = append(r.entries, s)
	}
	for k := range r.entries[:max(0, len(r.entries)-1)] {
		r.entries[k].swaps = r.maySwap(k)
	}
	return r, true
}

// decision numbers what is decided once for all entries of one place in the
// file.
func (r *choices) decision(known map[plan.Pos]int, at plan.Pos, k int) int {
	d, again := known[at]
	if !again {
		d = len(r.shared)
		known[at] = d
		r.shared, r.lastAt = append(r.shared, false), append(r.lastAt, k)
		return d
	}
	r.shared[d], r.lastAt[d] = true, k
	return d
}

func inSeries(it plan.Item) bool {
	for _, round := range it.Rounds {
		if round.Series {
			return true
		}
	}
	return false
}

// mayHold reports whether a hold can be written before item k. Beside a pause
// it is the pause that becomes longer; of what a repeat does, only the first
// item has a place before it.
func (r *choices) mayHold(k int) bool {
	items := r.part.Items
	if k == 0 || inSeries(items[k]) || isPause(items[k]) || isPause(items[k-1]) {
		return false
	}
	return items[k].Repeats == plan.Pos{} || len(items[k].Rounds) == 0 && items[k-1].Pos != items[k].Pos
}

func isPause(it plan.Item) bool {
	_, ok := it.Work.(plan.Pause)
	return ok
}

// maySwap reports whether set k and the next one may change places: nothing
// is to be picked up or set up between them, and each stands once in the file.
func (r *choices) maySwap(k int) bool {
	a, b := r.part.Items[k], r.part.Items[k+1]
	x, okX := a.Work.(plan.Set)
	y, okY := b.Work.(plan.Set)
	once := !r.shared[r.entries[k].written] && !r.shared[r.entries[k+1].written] && len(a.Rounds)+len(b.Rounds) == 0
	return okX && okY && once && x.Move != y.Move && a.Repeats == b.Repeats && a.Setup == b.Setup &&
		a.Setup == plan.Length{} &&
		len(r.entries[k].options) > 1 && len(r.entries[k+1].options) > 1 && align.SameKit(r.class, &a, &b)
}

// mostStretch is how much faster or slower than recorded a search plays a
// track.
//
// Common practice, no source: within 5 % either way nobody notices.
const mostStretch = 0.05

// tempos adds the part at the tempos nearest to the recorded one at which more
// of its rhythms can be controlled, of those that all of its tracks bear.
func (r *choices) tempos(tracks map[string]beat.Track) {
	recorded := r.variants[0].trial.Tempos()
	low, high := 0.0, math.Inf(1)
	for _, bpm := range recorded {
		low, high = max(low, bpm*(1-mostStretch)), min(high, bpm*(1+mostStretch))
	}
	faults := r.faults(r.variants[0].trial)
	var all []variant
	for bpm := math.Ceil(low); bpm <= high && len(faults) > 0; bpm++ {
		other := *r.part
		other.BPM = bpm
		trial, ok := align.NewTrial(r.class, &other, tracks)
		if !ok || bpm == r.part.BPM || len(r.faults(trial)) >= len(faults) {
			continue
		}
		m := tweak{kind: BPM, detail: say.Num(bpm, 1), edit: edit.SetBPM{Part: r.part.Pos, BPM: bpm}}
		off := 0.0
		for _, was := range recorded {
			m.price = max(m.price, r.prices.tempo(was, bpm))
			off = max(off, math.Abs(bpm/was-1))
		}
		all = append(all, variant{trial, []tweak{m}, m.price, off})
	}
	slices.SortStableFunc(all, func(a, b variant) int { // of two at one price, the nearer to the recording
		return cmp.Or(a.price-b.price, cmp.Compare(a.off, b.off))
	})
	fewest := len(faults)
	for _, w := range all { // farther from the recording only for more
		if n := len(r.faults(w.trial)); n < fewest {
			r.variants, fewest = append(r.variants, w), n
		}
	}
}

// faults lists the rhythms that are found fault with.
func (r *choices) faults(t *align.Trial) []plan.Reps {
	var all []plan.Reps
	for _, it := range r.part.Items {
		if s, ok := it.Work.(plan.Set); ok {
			for _, reps := range s.Reps {
				if t.Graded(s, reps.Rhythm) {
					all = append(all, reps)
				}
			}
		}
	}
	return all
}
