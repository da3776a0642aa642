package plan

// Set is a strength exercise counted to the music.
type Set struct {
	Move   string
	Reps   []Reps
	Weight string // "heavy", "2 x 6 kg", as written; empty when not given
	Range  Range  // FullRange when not given
	Sides  Sides
}

// Range is how far a move goes: its whole range or about half of it.
type Range string

const (
	FullRange Range = "full"
	HalfRange Range = "half"
)

func (Set) work() {}

// Pass is the number of counts of the set on one side.
func (s Set) Pass() int {
	sum := 0
	for _, r := range s.Reps {
		sum += r.Counts()
	}
	return sum
}

// Counts is the number of counts of the set on each of its sides.
func (s Set) Counts() int { return s.Pass() * s.Sides.Times() }

func readSet(m *mapping, it *Item, c *Catalog) Work {
	m.knownMove("set", it.Name, c, "class: squat")
	s := Set{
		Move:   it.Name,
		Reps:   read(m, "reps", m.need("reps", `reps: "4 x 2-2, 16 x 1-1"`), parseReps),
		Weight: m.weight(),
		Range:  word(m, "range", FullRange, HalfRange),
		Sides:  word(m, "sides", Both, Right, Left),
	}
	if s.Range == "" {
		s.Range = FullRange
	}
	m.thrown(s, c)
	if it.On == OnClock {
		m.r.problem(m.value("on"), "a set is counted to the music, not by the clock",
			"work by the clock is an interval: {interval: squat, time: 30s, on: clock}")
	}
	return s
}

// weight reads the weight as the instructor writes it; a bare number could be
// kilograms, pounds or pieces.
func (m *mapping) weight() string {
	w := m.text("weight")
	if decimal.MatchString(w) {
		m.r.problem(m.value("weight"), "weight: "+w+" has no unit", w+" kg? Or words, like heavy")
		return ""
	}
	return w
}

// thrown refuses half the range of a move that throws its weight.
func (m *mapping) thrown(s Set, c *Catalog) {
	move, _ := c.Find(s.Move)
	if limit, ok := c.LimitFor(move); ok && limit.Ballistic && s.Range == HalfRange {
		m.r.problem(m.value("range"), shown(s.Move)+" has no half range: it is thrown, and goes as far as it goes",
			"remove range; what helps is another rhythm or a lighter weight")
	}
}
