package align

import (
	"onphrase/beat"
	"onphrase/plan"
)

// Late is how a class that runs late still ends on a phrase and with its
// cool-down.
type Late struct {
	Left float64 // [s] until the class must be over
	End  Stretch // the cool-down, as far as it can be done
	Work float64 // what is left before it [s]
	From []Way   // by the part that she is about to begin, in the order of the class
}

// Stretch is rows of a count map that follow each other, from 1; none when Last
// is 0.
type Stretch struct {
	First, Last int
	Seconds     float64
	Phrase      int // that it ends with, 0 when that is not known
}

// Way is what to do from the beginning of a part on, and what to drop.
type Way struct {
	Part  int // of the count map
	Do    Stretch
	Drop  Stretch // what of the part that is stopped in, or not begun, comes after it
	Parts []int   // dropped whole
}

// RunsLate works out what to drop when so much time [s] is left. Parts that fit
// as they are need no way. Work stops after a whole item that ends with a
// phrase.
func (m *CountMap) RunsLate(left float64) Late {
	end := m.calmFrom()
	l := Late{Left: left, Work: left}
	if end < len(m.Parts) {
		l.End = m.fitting(end, len(m.Parts), left, false)
		l.Work = max(0, left-l.End.Seconds)
		if l.End.Last < m.Rows[len(m.Rows)-1].Row {
			l.Work = 0
		}
	}
	for i := range m.Parts[:end] {
		if m.Parts[i].Row == 0 || Kind(m.Parts[i]) == plan.WarmUp || m.between(i, end) <= l.Work {
			continue
		}
		l.From = append(l.From, m.way(i, end, l.Work))
	}
	return l
}

// Kind is the kind of a part of a count map.
func Kind(p Part) plan.PartKind { return plan.PartKind(p.Kind) }

// calmFrom is the first of the parts that bring people down at the end of the
// class.
func (m *CountMap) calmFrom() int {
	i := len(m.Parts)
	for i > 0 && calm(Kind(m.Parts[i-1])) && m.Parts[i-1].Row > 0 {
		i--
	}
	return i
}

// between is how long the parts from one to before another last [s].
func (m *CountMap) between(from, to int) float64 {
	s := 0.0
	for _, p := range m.Parts[from:to] {
		s += p.Seconds
	}
	return ms(s)
}

func (m *CountMap) way(from, to int, seconds float64) Way {
	w := Way{Part: from, Do: m.fitting(from, to, seconds, true)}
	last := w.Do.Last
	for i := from; i < to; i++ {
		rows := m.RowsOf(i)
		switch {
		case len(rows) == 0 || rows[len(rows)-1].Row <= last:
		case rows[0].Row > last:
			w.Parts = append(w.Parts, i)
		default:
			w.Drop = Stretch{First: last + 1, Last: rows[len(rows)-1].Row}
		}
	}
	return w
}

// fitting is as much of some parts, from their beginning, as fits into a time.
// It ends after a whole item and, where it is to, with a phrase.
func (m *CountMap) fitting(from, to int, seconds float64, onPhrase bool) Stretch {
	var s Stretch
	for i := from; i < to; i++ {
		rows := m.RowsOf(i)
		for j, r := range rows {
			took := r.ClassTime + r.Seconds - m.Parts[from].ClassTime
			if !r.Kind.Work() || ms(took) > seconds || j+1 < len(rows) && sameWork(r, rows[j+1]) {
				continue
			}
			phrase, whole := m.endsPhrase(i, r)
			if whole || !onPhrase {
				s = Stretch{First: m.Parts[from].Row, Last: r.Row, Seconds: ms(took), Phrase: phrase}
			}
		}
	}
	return s
}

// sameWork reports whether two rows are pieces or sides of one item.
func sameWork(a, b Row) bool {
	if a.Line != b.Line || a.Item != b.Item || len(a.Rounds) != len(b.Rounds) {
		return false
	}
	for i := range a.Rounds {
		if a.Rounds[i] != b.Rounds[i] {
			return false
		}
	}
	return true
}

// endsPhrase is the phrase that a row ends with, if it does.
func (m *CountMap) endsPhrase(part int, r Row) (n int, ok bool) {
	if r.Phrase == 0 || r.ByClock {
		return 0, false
	}
	left := r.Count - 1 + r.Counts
	for n = r.Phrase; ; n++ {
		length := beat.PhraseLen
		for _, t := range m.Parts[part].Tracks {
			if t.File == r.Track && t.Taught != nil && n <= len(t.Taught.Phrases) {
				length = t.Taught.Phrases[n-1].Counts
			}
		}
		if left <= length {
			return n, left == length
		}
		left -= length
	}
}
