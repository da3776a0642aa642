package web

import (
	"fmt"
	"math"
	"strings"

	"onphrase/align"
)

// sheet is a part on paper: few lines, as large as they can be.
type sheet struct {
	Lines []line
	Size  string // of the type [pt]
	Music []string
	More  string // where the part stands in the class
}

// line is an item on the sheet, with everything that belongs to it.
type line struct {
	Time   string
	What   string
	Dose   string
	Note   string // the moves of a block, what to say
	Phrase string
	Counts string
	Thin   bool // nothing is taught in it
}

// A landscape sheet within 10 mm margins, the smaller of ISO 216 A4 (297 x 210
// mm) and ANSI A, Letter (279.4 x 215.9 mm), in points; what the head and the
// cautions take of it; and how the lines are set in page/wall.css.
const (
	sheetWidth  = (279.4 - 20) / 25.4 * 72
	sheetHeight = (210 - 20) / 25.4 * 72
	sheetHead   = 60.0
	sheetFoot   = 62.0
	leading     = 1.2  // line height to type size
	padding     = 6.0  // between lines, with the rule [pt]
	letter      = 0.58 // mean width of a bold letter to type size, generously
	light       = 0.52 // of one that is not bold
	thin        = 0.5  // size of a line in which nothing is taught
	// Sizes of what stands round the move, to the move's own, and the widths
	// of the two columns beside it.
	beside, below = 0.6, 0.4
	clock, where  = 2.5, 2.6
	// Capitals of 12 mm need type of 48 pt, capitals being 0.7 of it.
	largest, least = 54, 13
)

func sheetOf(m *align.CountMap, i int) sheet {
	p := m.Parts[i]
	s := sheet{More: fmt.Sprintf("part %d of %d", i+1, len(m.Parts))}
	for _, t := range p.Tracks {
		switch {
		case t.Problem != "":
			s.Music = append(s.Music, titleOf(t)+": "+t.Problem)
		case t.Used:
			s.Music = append(s.Music, fmt.Sprintf("%s, %s BPM", titleOf(t), bpm(t.Played)))
		}
	}
	s.Lines = linesOf(m.RowsOf(i))
	s.Size = fmt.Sprintf("%dpt", s.fit())
	return s
}

// linesOf puts rows that come from one line of the class file on one line.
func linesOf(rows []align.Row) []line {
	var out []line
	for i := 0; i < len(rows); {
		n := i + 1
		for n < len(rows) && rows[i].Kind.Work() && sameItem(rows[i], rows[n]) {
			n++
		}
		out = append(out, lineOf(rows[i:n]))
		i = n
	}
	return out
}

func sameItem(a, b align.Row) bool {
	return a.Kind == b.Kind && a.Item == b.Item && a.Line == b.Line && a.Line > 0
}

func lineOf(rows []align.Row) line {
	first := rows[0]
	l := line{Time: "?", What: first.Item, Note: noteOf(first), Thin: !first.Kind.Work()}
	if first.Placed {
		l.Time = align.Clock(first.ClassTime)
	}
	counts := 0
	var doses, sides []string
	for _, r := range rows {
		counts += r.Counts
		doses = add(doses, shortDose(r))
		sides = add(sides, r.Side)
	}
	if first.Passes > 1 {
		doses = append(doses, fmt.Sprintf("%d times", len(rows)))
	}
	doses = add(doses, strings.Join(sides, " and "))
	doses = add(doses, first.Weight)
	if first.Range == "half" {
		doses = add(doses, "half range")
	}
	l.Dose = strings.Join(doses, ", ")
	if counts > 0 {
		l.Counts = many(counts, "count")
	}
	if first.Phrase > 0 {
		l.Phrase = fmt.Sprintf("phrase %d", first.Phrase)
	}
	return l
}

// noteOf is what is read from nearer: the moves of a block, what to say.
func noteOf(r align.Row) string {
	var words []string
	for _, s := range r.Moves {
		words = append(words, fmt.Sprintf("%s %d", strings.Join(append([]string{s.Move}, s.With...), " + "), s.Counts))
	}
	note := strings.Join(words, ", ")
	switch {
	case r.Cue == "":
		return note
	case note == "":
		return "say: " + r.Cue
	}
	return note + "; say: " + r.Cue
}

// add appends what is not there yet, and never the empty string.
func add(list []string, s string) []string {
	if s == "" {
		return list
	}
	for _, have := range list {
		if have == s {
			return list
		}
	}
	return append(list, s)
}

// fit is the largest type in which all lines go on one sheet [pt].
func (s sheet) fit() int {
	size := largest
	for size > least && s.height(float64(size)) > sheetHeight-sheetHead-sheetFoot {
		size--
	}
	return size
}

// height is what the lines take at a type size [pt].
func (s sheet) height(size float64) float64 {
	sum := 0.0
	for _, l := range s.Lines {
		sum += l.height(size) + padding
	}
	return sum
}

// height of a line: the move, beside or below it what belongs to it, and
// below that the note.
func (l line) height(size float64) float64 {
	if l.Thin {
		size *= thin
	}
	room := sheetWidth - (clock+where)*size
	what, dose, note := width(l.What, size*letter), width(l.Dose, size*beside*letter), width(l.Note, size*below*light)
	lines := 1.0
	if what+size/2+dose > room {
		lines = math.Ceil(what/room) + beside*math.Ceil(dose/room)
	}
	return (lines + below*math.Ceil(note/room)) * size * leading
}

// width of a text whose letters have a mean width.
func width(s string, letter float64) float64 { return float64(len([]rune(s))) * letter }
