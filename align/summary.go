package align

import (
	"cmp"
	"fmt"
	"slices"

	"onphrase/plan"
)

// Summary is the whole class in figures.
type Summary struct {
	Shares   []Share `json:"shares"`    // by kind of part, in the order of the class
	Patterns []Total `json:"patterns"`  // sets by movement pattern, the most repetitions first
	Weights  []Total `json:"weights"`   // sets by weight as written, the most time under load first
	Loads    []Total `json:"loads"`     // sets by class of load, and by weight as written where that names none
	High     float64 `json:"high"`      // seconds of work with high impact
	Landings int     `json:"landings"`  // hard landings in it
	DryGap   float64 `json:"water_gap"` // the longest time without water [s]
	Kit      []Kit   `json:"kit"`
}

// Share is how much of the class one kind of part takes.
type Share struct {
	Kind    string  `json:"kind"`
	Seconds float64 `json:"seconds"`
	Share   float64 `json:"share"` // of the length of the class, 0 to 1
}

// Total adds up sets.
type Total struct {
	Name    string  `json:"name"` // of the pattern, or the weight
	Reps    int     `json:"reps"`
	Right   int     `json:"right"`   // of them on the right
	Left    int     `json:"left"`    // of them on the left
	InTurn  int     `json:"in_turn"` // of them right and left in turn
	Seconds float64 `json:"seconds"` // under load
}

// Sides writes how many of the repetitions are done on which side: "8 right,
// 8 left, 7 in turn"; nothing where no side is named.
func (t Total) Sides() string {
	if t.Right+t.Left == 0 {
		return ""
	}
	text := fmt.Sprintf("%d right, %d left", t.Right, t.Left)
	if t.InTurn > 0 {
		text += fmt.Sprintf(", %d in turn", t.InTurn)
	}
	return text
}

// Kit is one thing that everybody needs.
type Kit struct {
	Item    string   `json:"item"`
	Weights []string `json:"weights"` // as written, in the order met
}

// summary adds up the rows.
func (l *placedClass) summary() Summary {
	s := Summary{Shares: l.shares(), Kit: l.kit(), DryGap: ms(l.dryGap().seconds)}
	s.Patterns = l.totals(func(r *placedRow) string { return r.Pattern },
		func(a, b Total) int { return b.Reps - a.Reps })
	s.Weights = l.totals(func(r *placedRow) string { return r.Weight },
		func(a, b Total) int { return cmp.Compare(b.Seconds, a.Seconds) })
	s.Loads = l.totals(func(r *placedRow) string { return r.LoadClass },
		func(a, b Total) int { return cmp.Compare(b.Seconds, a.Seconds) })
	for _, w := range l.landings() {
		s.High, s.Landings = s.High+w.seconds, s.Landings+w.landings
	}
	s.High = ms(s.High)
	return s
}

// shares adds up parts by kind; what lies between them counts for the part it
// belongs to.
func (l *placedClass) shares() []Share {
	all := []Share{}
	for _, p := range l.parts {
		i := slices.IndexFunc(all, func(s Share) bool { return s.Kind == string(p.part.Kind) })
		if i < 0 {
			i = len(all)
			all = append(all, Share{Kind: string(p.part.Kind)})
		}
		all[i].Seconds += p.ends - p.begins
	}
	for i := range all {
		if length := l.length(); length > 0 {
			all[i].Share = ms(all[i].Seconds / length)
		}
		all[i].Seconds = ms(all[i].Seconds)
	}
	return all
}

// totals adds up the sets by a name; those without one are left out.
func (l *placedClass) totals(name func(*placedRow) string, order func(a, b Total) int) []Total {
	all := []Total{}
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		n := name(r)
		if r.Kind != SetRow || n == "" {
			return
		}
		i := slices.IndexFunc(all, func(t Total) bool { return t.Name == n })
		if i < 0 {
			i = len(all)
			all = append(all, Total{Name: n})
		}
		t := &all[i]
		t.Reps += r.Reps
		t.Seconds += r.Load
		switch plan.Sides(r.Side) {
		case plan.Right:
			t.Right += r.Reps
		case plan.Left:
			t.Left += r.Reps
		default:
			set, _ := r.item.Work.(plan.Set)
			if m, ok := l.move(set.Move); ok && m.Switches {
				t.InTurn += r.Reps
			}
		}
	})
	for i := range all {
		all[i].Seconds = ms(all[i].Seconds)
	}
	slices.SortStableFunc(all, order)
	return all
}
