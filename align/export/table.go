package export

import (
	"slices"
	"strconv"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// column is one column of the text table.
type column struct {
	head  string
	right bool // aligned to the right
	cell  func(align.Row) string
}

// what is the index of the column that takes the room the others leave.
const what = 4

var tableColumns = []column{
	{"row", true, func(r align.Row) string { return strconv.Itoa(r.Row) }},
	{"time", true, timeOf},
	{"phrase", true, func(r align.Row) string { return figure(r.Phrase) }},
	{"count", true, func(r align.Row) string { return figure(r.Count) }},
	{"what", false, nameOf},
	{"reps", false, repsOf},
	{"counts", true, countsOf},
	{"side", false, align.Row.SideWords},
	{"cue", true, cueOf},
}

// gap is the room between two columns.
const gap = 2

// table writes a part's rows in columns of the given widths. What does not
// fit goes on below.
func (p *printer) table(rows []align.Row, widths []int) {
	if len(rows) == 0 {
		return
	}
	var heads []string
	for _, c := range tableColumns {
		heads = append(heads, c.head)
	}
	p.line(p.paint(join(heads, widths), dim))
	var item string
	var said []string // of that item: the same details are written once
	round := ""
	for i, r := range rows {
		if now := roundAt(rows, i, round); now != round {
			round, item = now, ""
			p.line(p.paint(strings.Repeat(" ", offset(widths))+round, bold))
		}
		details := detailsOf(r)
		if r.Kind.Work() {
			fresh := details
			if r.Item == item {
				fresh = slices.DeleteFunc(slices.Clone(details),
					func(d string) bool { return slices.Contains(said, d) })
			}
			item, said, details = r.Item, details, fresh
		}
		p.row(r, append(details, soFar(rows, i)...), widths)
	}
}

// roundAt names the round of row i, after a row of the round before. A hold or a
// change inside a round belongs to it, one between two to neither.
func roundAt(rows []align.Row, i int, before string) string {
	for _, r := range rows[i:] {
		if !r.Kind.Work() {
			continue
		}
		now := strings.Join(roundsOf(r), ", ")
		if now == before || r.Row == rows[i].Row {
			return now
		}
		break
	}
	if before == "" || rows[i].Kind.Work() {
		return before
	}
	return ""
}

func (p *printer) row(r align.Row, details []string, widths []int) {
	var cells []string
	for _, c := range tableColumns {
		cells = append(cells, say.OneLine(c.cell(r)))
	}
	style := plain
	if !r.Kind.Work() {
		style = dim
	}
	for _, line := range wrapCells(cells, widths) {
		p.line(p.paint(strings.TrimRight(join(line, widths), " "), style))
	}
	indent := strings.Repeat(" ", offset(widths))
	for _, d := range details {
		p.wrap(d, indent+"  ", dim)
	}
}

// wrapCells breaks words over as many lines as the tallest cell needs. Figures
// stay on the first.
func wrapCells(cells []string, widths []int) [][]string {
	lines := [][]string{slices.Clone(cells)}
	for i, c := range tableColumns {
		if c.right || widths[i] == 0 {
			continue
		}
		for n, l := range say.Wrap(cells[i], widths[i]) {
			if n == len(lines) {
				lines = append(lines, make([]string, len(cells)))
			}
			lines[n][i] = l
		}
	}
	return lines
}

// readable is the room that the names of most moves need; below it, words in
// the columns beside them take two lines.
const readable = 18

// widths gives each column the room of its widest cell, and the column what
// the rest of the line.
func (p *printer) widths(rows []align.Row) []int {
	widths := make([]int, len(tableColumns))
	rest := p.Width
	for i, c := range tableColumns {
		if i == what {
			continue
		}
		for _, r := range rows {
			widths[i] = max(widths[i], say.Columns(say.OneLine(c.cell(r))))
		}
		if widths[i] > 0 { // an empty column is left out
			widths[i] = max(widths[i], say.Columns(c.head))
			rest -= widths[i] + gap
		}
	}
	for i, c := range tableColumns {
		if rest < readable && i != what && !c.right && widths[i] > 0 {
			narrow := max(say.Columns(c.head), twoLines(rows, c))
			rest += widths[i] - narrow
			widths[i] = narrow
		}
	}
	widths[what] = max(rest, len("set up"))
	return widths
}

// twoLines is the room a column needs when no cell is to take more than two
// lines and no word is to be broken.
func twoLines(rows []align.Row, c column) int {
	n := 0
	for _, r := range rows {
		cell := c.cell(r)
		for _, w := range say.Words(cell) {
			n = max(n, say.Columns(w))
		}
		for len(say.Wrap(cell, n)) > 2 {
			n++
		}
	}
	return n
}

// offset is where the column what begins.
func offset(widths []int) int {
	n := 0
	for _, w := range widths[:what] {
		if w > 0 {
			n += w + gap
		}
	}
	return n
}

// join sets cells side by side.
func join(cells []string, widths []int) string {
	var b strings.Builder
	for i, c := range cells {
		if widths[i] == 0 {
			continue
		}
		if b.Len() > 0 {
			b.WriteString(strings.Repeat(" ", gap))
		}
		if tableColumns[i].right {
			c = strings.Repeat(" ", max(0, widths[i]-say.Columns(c))) + c
		}
		b.WriteString(say.Pad(c, widths[i]))
	}
	return b.String()
}
