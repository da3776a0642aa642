package fit

import (
	"fmt"
	"math"
	"strconv"

	"onphrase/plan"
	"onphrase/plan/edit"
	"onphrase/plan/say"
)

// Change is one thing to change in a class, with what it costs.
type Change struct {
	Part    string  `json:"part"`
	Line    int     `json:"line"` // in the class file as it is
	Kind    Kind    `json:"kind"`
	Words   string  `json:"words"`   // what changes, and by how much
	Counts  int     `json:"counts"`  // more, or fewer below 0, each time it is done
	Seconds float64 `json:"seconds"` // the same in time, as played
	Price   int     `json:"price"`

	edit edit.Change
}

// way is one way through a part.
type way struct {
	changes []Change
	cost    int // of the changes and of the findings left
}

// changes reads the changes off the nodes that lead to the last one.
func (s *search) changes(last *node) way {
	var path []*node
	for n := last; n.before != nil; n = n.before {
		path = append(path, n)
	}
	w := way{cost: last.cost}
	for i := len(path) - 1; i >= 0; i-- {
		n := path[i]
		switch st := n.step; {
		case st.forced:
		case st.begin:
			w.changes = append(w.changes, s.begun(n)...)
		case st.hold > 0:
			w.changes = append(w.changes, s.heldBefore(n, path[i-1].step.entry))
		default:
			w.changes = append(w.changes, s.laidAs(n)...)
		}
	}
	for i := range w.changes {
		w.changes[i].Part = s.part.Name
	}
	return w
}

// begun says how the part begins otherwise.
func (s *search) begun(n *node) []Change {
	var out []Change
	variant := s.variants[n.variant]
	for _, m := range variant.tweaks {
		was, unit := s.variants[0].trial.Tempos()[0], "as recorded"
		if s.part.BPM > 0 {
			was, unit = s.part.BPM, "as it was"
		}
		bpm, _ := strconv.ParseFloat(m.detail, 64)
		words := fmt.Sprintf("all of it at %s BPM, not at %s %s (%+.1f %%)", m.detail, say.Num(was, 1), unit, 100*(bpm/was-1))
		out = append(out, Change{Line: s.part.Pos.Line, Kind: BPM, Words: words, Price: m.price, edit: m.edit})
	}
	if st := n.step; st.start != s.part.Start {
		before, _ := variant.trial.Begin(s.part.Start)
		sooner := n.state.At - before.At
		c := Change{
			Line: s.part.Pos.Line, Kind: Start, Price: st.price - variant.price, Seconds: seconds(sooner),
			edit: edit.SetStart{Part: s.part.Pos, Phrase: st.start.Phrase},
		}
		c.Words = fmt.Sprintf("starts on phrase %d instead of %s", st.start.Phrase, s.startNow(seconds(sooner)))
		out = append(out, c)
	}
	return out
}

// startNow says where the part starts as written, and how much later the other
// start is [s].
func (s *search) startNow(later float64) string {
	st, trial := s.part.Start, s.variants[0].trial
	where := fmt.Sprintf("phrase %d", st.Phrase)
	switch {
	case st.Time != nil:
		where = say.Num(*st.Time, 1) + " s"
	case st.Count > 0:
		where = fmt.Sprintf("count %d", st.Count)
	case st.Phrase == 0:
		where = fmt.Sprintf("phrase %d", trial.PhraseOf(st))
	}
	if !trial.Has(st) {
		return where + ", which the song does not have"
	}
	more := "more"
	if later < 0 {
		more = "less"
	}
	return fmt.Sprintf("%s, %s s %s of music before it", where, say.Num(math.Abs(later), 1), more)
}

// heldBefore is a hold before the entry laid next.
func (s *search) heldBefore(n *node, next int) Change {
	it := s.entries[next].item
	c := Change{
		Line: it.Pos.Line, Kind: Hold, Counts: n.step.hold, Price: n.step.price,
		Seconds: seconds(float64(n.step.hold) * n.before.state.PerCount),
	}
	hold := holdItem(n.step)
	c.edit = edit.AddPause{Before: it.Pos, Name: holdName, Time: hold.Work.(plan.Pause).Time, On: hold.On}
	c.Words = fmt.Sprintf("a hold of %s before %s%s, %s", say.Many(c.Counts, "count"), it.Name,
		s.eachRound(s.entries[next].place), lasting(c.Seconds))
	return c
}

// laidAs says how an entry is done otherwise than written.
func (s *search) laidAs(n *node) []Change {
	st := n.step
	sl := &s.entries[st.entry]
	o := &sl.options[st.option]
	var out []Change
	if st.swap {
		other := s.entries[n.next].item
		out = append(out, Change{
			Line: sl.item.Pos.Line, Kind: Swap, Price: s.prices[Swap],
			Words: fmt.Sprintf("%s comes before %s", sl.item.Name, other.Name),
			edit:  edit.Swap{Item: other.Pos, Next: sl.item.Pos},
		})
	}
	for _, m := range o.tweaks {
		c := Change{Line: written(*sl.item).Line, Kind: m.kind, Counts: m.counts, Price: m.price, edit: m.edit}
		if m.kind == OnPhrase {
			c.Counts, c.Price = n.state.Waited, m.price+s.prices.held(n.state.Waited)
		}
		c.Seconds = seconds(float64(c.Counts) * n.before.state.PerCount)
		if m.kind == Time && c.Counts == 0 {
			c.Seconds = timeOf(o.item) - timeOf(*sl.item)
		}
		c.Words = m.say + s.eachRound(sl.written) + figures(c, m.reps)
		out = append(out, c)
	}
	return out
}

// eachRound adds that something is done in every round.
func (s *search) eachRound(decision int) string {
	if decision != noHold && s.shared[decision] {
		return ", every time"
	}
	return ""
}

// figures says what a change means in repetitions, counts and seconds.
func figures(c Change, reps int) string {
	text := ""
	switch {
	case reps > 0:
		text = fmt.Sprintf(", %s more", say.Many(reps, "rep"))
	case reps < 0:
		text = fmt.Sprintf(", %s fewer", say.Many(-reps, "rep"))
	case c.Kind == Split:
		text = ", the same reps"
	}
	switch {
	case c.Counts == 0 && c.Kind == Slower:
		return text + " in the same counts"
	case c.Kind == OnPhrase && c.Counts > 0:
		return fmt.Sprintf("%s, after a hold of %s (%s s)", text, say.Many(c.Counts, "count"), say.Num(c.Seconds, 1))
	case c.Seconds != 0:
		return text + ", " + lasting(c.Seconds)
	}
	return text
}

func lasting(s float64) string {
	if s < 0 {
		return say.Num(-s, 1) + " s shorter"
	}
	return say.Num(s, 1) + " s longer"
}

// timeOf is the length of timed work in seconds, 0 when it is in counts.
func timeOf(it plan.Item) float64 {
	switch w := it.Work.(type) {
	case plan.Interval:
		return w.Time.Seconds
	case plan.Pause:
		return w.Time.Seconds
	}
	return 0
}

// seconds rounds to a tenth of a second.
func seconds(s float64) float64 { return math.Round(10*s) / 10 }
