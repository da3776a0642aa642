package web

import (
	"fmt"
	"slices"
	"strings"

	"onphrase/align"
)

// summary is the sheet of the class as a whole, or some of it: what is played
// when, and what was found.
type summary struct {
	Again bool   // it goes on from the sheet before
	More  string // which of its sheets it is
	Parts []part
	Head  string // of the findings
	Found []found
}

// setting is the type of a summary [pt], as in page/wall.css: of the parts and
// figures, of the heads, of the findings and of the cautions.
type setting struct{ body, head, found, foot float64 }

var (
	roomy = setting{body: 11.5, head: 13, found: 10, foot: 10} // read from arm's length
	plain = setting{body: 9.5, head: 11, found: 8, foot: 7.2}
)

// How a summary is set in page/wall.css: gaps of 6 mm, a table 3.4 times as
// wide as a list beside it, the findings in three columns.
const (
	gap       = 6 / 25.4 * 72
	listWidth = (sheetWidth - 3*gap) / (3.4 + 3)
	tabWidth  = listWidth * 3.4
	abreast   = 3
	foundWide = (sheetWidth - (abreast-1)*gap) / abreast
	titleHead = 32.0 // a heading without music [pt]
	normal    = 1.2  // line height to type size, on a summary
	clocks    = 14   // letters of a part's time
	cell      = 6.0  // between the columns of the table
	rule      = 4.0  // between its lines, with the rule
)

// summariesOf puts the class on one sheet in large type, else on as many as it
// needs. Each can be read without the others.
func summariesOf(d document) (sheets []summary, large bool) {
	sheets, large = roomy.sheets(d), true
	if len(sheets) > 1 {
		sheets, large = plain.sheets(d), false
	}
	for i := range sheets {
		sheets[i].Again = i > 0
		if len(sheets) > 1 {
			sheets[i].More = fmt.Sprintf("sheet %d of %d", i+1, len(sheets))
		}
	}
	return sheets, large
}

func (s setting) sheets(d document) []summary {
	full := sheetHeight - s.around(d)
	out, used := s.table(d, full)
	return s.list(d, out, full-used, full)
}

// around is the height of the heading and the cautions.
func (s setting) around(d document) float64 {
	h := titleHead + moreHead(d.Class+" continued", d.Length+" of "+d.Slot+", sheet 10 of 10", nil)
	for _, c := range d.Cautions {
		h += wrapped(c, s.foot*light, sheetWidth) * s.foot * 1.25
	}
	return h
}

// table fills sheets with the parts. It also says how much of the last one is
// used.
func (s setting) table(d document, full float64) (out []summary, used float64) {
	out = []summary{{}}
	top := s.body*normal + rule
	used = top
	for _, p := range d.Parts {
		h := s.rowHeight(p)
		if used+h > full && used > top {
			out, used = append(out, summary{}), top
		}
		last := &out[len(out)-1]
		last.Parts = append(last.Parts, p)
		used += h
	}
	if len(out) == 1 {
		used = max(used, s.listHeight(d.Totals.Kit), s.listHeight(d.Totals.Shares), s.listHeight(d.Totals.Patterns))
	}
	return out, used
}

// rowHeight is that of a part in the table. Name and music share the width as
// their lengths are.
func (s setting) rowHeight(p part) float64 {
	room := tabWidth - 3*cell - clocks*s.body*light
	name, music := width(p.Name, s.body*letter), 0.0
	for _, m := range p.Music {
		music = max(music, width(m, s.body*light))
	}
	share := min(1, room/(name+music))
	lines := 0.0
	for _, m := range p.Music {
		lines += wrapped(m, s.body*light, music*share)
	}
	return max(lines, wrapped(p.Name, s.body*letter, name*share))*s.body*normal + rule
}

func (s setting) headHeight() float64 { return s.head*normal + 10 }

func (s setting) listHeight(words []string) float64 {
	h := s.headHeight()
	for _, w := range words {
		h += wrapped(w, s.body*light, listWidth) * s.body * normal
	}
	return h
}

// list fills what is left of the last sheet, and more sheets, with what was
// found: column by column, as a browser balances them.
func (s setting) list(d document, out []summary, left, full float64) []summary {
	found := gravest(d.Totals.Found)
	full -= s.headHeight()
	height := left - s.headHeight() // of the columns
	first := s.found * normal
	if len(found) > 0 {
		first = s.foundHeight(found[0])
	}
	if height < first { // a head never stands alone
		out, height = append(out, summary{}), full
	}
	out[len(out)-1].Head = "Findings: " + d.Count + ". The notes are at the desk."
	column, room := 0, height
	for _, f := range found {
		h := s.foundHeight(f)
		if h > room {
			column, room = column+1, height
		}
		if column == abreast || h > room {
			out = append(out, summary{Head: "Findings, continued"})
			column, height, room = 0, full, full
		}
		last := &out[len(out)-1]
		last.Found = append(last.Found, f)
		room -= h
	}
	return out
}

// gravest are the findings that are printed; the notes are at the desk.
func gravest(all []found) []found {
	return slices.DeleteFunc(slices.Clone(all), func(f found) bool { return f.Grade == string(align.Note) })
}

func (s setting) foundHeight(f found) float64 {
	text := strings.Join([]string{f.Label, f.Where + ":", f.Message + ". Try:", f.Fix}, " ")
	mark := 1.5 * s.found
	return wrapped(text, s.found*light, foundWide-mark)*s.found*1.22 + 2
}
