package align

import "slices"

// Comparison is one class laid twice: before and after its music or some of
// its items were changed.
type Comparison struct {
	Parts []PartMoved
	Differences
}

// PartMoved is a part before and after, with its work in the order done.
type PartMoved struct {
	Was, Is Part
	Work    []Moved
}

// Moved is a row of work, or all passes of a block, before and after.
type Moved struct {
	Kind   RowKind
	Item   string
	Side   string // empty for a block, whose passes are gathered
	Reps   int
	Rhythm string
	Was    Spell
	Is     Spell
}

// Spell is where and how long something lies.
type Spell struct {
	Row       int     `json:"row"`
	Placed    bool    `json:"placed"` // otherwise phrase and count are unknown
	ClassTime float64 `json:"class_time"`
	Phrase    int     `json:"phrase"`
	Count     int     `json:"count"`
	Counts    int     `json:"counts"`
	Held      int     `json:"held"`        // counts of hold before it, and between its passes
	Seconds   float64 `json:"seconds"`     // without the hold
	PerRep    float64 `json:"rep_seconds"` // 0 where there are none
}

// Compare puts a class laid on its music beside the same class on other
// music. Both have the same work in the same order.
func Compare(was, is *CountMap) Comparison {
	c := Comparison{Differences: Differ(was, is)}
	for i := range min(len(was.Parts), len(is.Parts)) {
		p := PartMoved{Was: was.Parts[i], Is: is.Parts[i]}
		a, b := spells(was.RowsOf(i)), spells(is.RowsOf(i))
		for k := range min(len(a), len(b)) {
			m := b[k]
			m.Was = a[k].Is
			p.Work = append(p.Work, m)
		}
		c.Parts = append(c.Parts, p)
	}
	return c
}

// spells lists the work of a part, each with where it lies as Is.
func spells(rows []Row) []Moved {
	var all []Moved
	held := 0
	for _, r := range rows {
		if r.Kind == HoldRow {
			held += r.Counts
		}
		if !r.Kind.Work() {
			continue
		}
		if r.Kind == BlockRow && r.Pass > 1 && len(all) > 0 {
			s := &all[len(all)-1].Is
			s.Counts, s.Seconds, s.Held = s.Counts+r.Counts, ms(s.Seconds+r.Seconds), s.Held+held
			held = 0
			continue
		}
		m := Moved{Kind: r.Kind, Item: r.Item, Side: r.Side, Reps: r.Reps, Rhythm: r.Rhythm.String()}
		if r.Kind == BlockRow {
			m.Side = ""
		}
		m.Is = Spell{
			Row: r.Row, Placed: r.Placed, ClassTime: r.ClassTime, Phrase: r.Phrase, Count: r.Count,
			Counts: r.Counts, Held: held, Seconds: r.Seconds,
		}
		if r.Reps > 0 && r.Placed {
			m.Is.PerRep = ms(r.Seconds / float64(r.Reps))
		}
		all, held = append(all, m), 0
	}
	return all
}

// Differences are findings before and after a change of a class.
type Differences struct {
	Gone []Finding // of those before
	Left []Finding // of those after, known before
	New  []Finding // of those after
}

// Differ sorts the findings on a class before and after a change. They are
// the same when they are of the same grade about the same thing: figures, rows
// and lines move.
func Differ(was, is *CountMap) Differences {
	var d Differences
	known := map[subject]int{}
	for _, f := range was.Findings {
		known[was.subject(f)]++
	}
	still := map[subject]int{}
	for _, f := range is.Findings {
		s := is.subject(f)
		if known[s] > still[s] {
			still[s]++
			d.Left = append(d.Left, f)
		} else {
			d.New = append(d.New, f)
		}
	}
	for _, f := range was.Findings {
		s := was.subject(f)
		if still[s] > 0 {
			still[s]--
		} else {
			d.Gone = append(d.Gone, f)
		}
	}
	return d
}

// subject is what a finding is about.
type subject struct {
	code, part, item string
	severity         Severity
}

func (m *CountMap) subject(f Finding) subject {
	s := subject{code: f.Code, part: f.Part, severity: f.Severity}
	if f.Row > 0 && f.Row <= len(m.Rows) && f.Code != musicEnds.Code && slices.Contains(TrialCodes(), f.Code) {
		s.item = m.Rows[f.Row-1].Item
	}
	return s
}
