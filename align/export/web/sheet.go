package web

import (
	"fmt"
	"math"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// sheet is a part on paper, or some of it: few lines, as large as they can be.
type sheet struct {
	Lines []line
	Size  string // of the type [pt]
	More  string // where it stands in the class
}

// A landscape sheet within 10 mm margins, the smaller of ISO 216 A4 (297 x 210
// mm) and ANSI A, Letter (279.4 x 215.9 mm), in points; what the head and the
// cautions take of it; and how the lines are set in page/wall.css.
const (
	sheetWidth  = (279.4 - 20) / 25.4 * 72
	sheetHeight = (210 - 20) / 25.4 * 72
	sheetHead   = 60.0
	sheetFoot   = 62.0
	sheetRoom   = sheetHeight - sheetHead - sheetFoot
	leading     = 1.15 // line height to type size
	padding     = 5.0  // between lines, with the rule [pt]
	letter      = 0.58 // mean width of a bold letter to type size, generously
	light       = 0.52 // of one that is not bold
	thin        = 0.5  // size of a line in which nothing is taught
	// Sizes of what stands round the move, to the move's own, and the widths
	// of the two columns beside it, of the second the least.
	beside, below = 0.6, 0.4
	clock, where  = 2.5, 2.6
	// Capitals of 12 mm need type of 48 pt, capitals being 0.7 of it.
	largest, least = 54, 13
)

// sheetsOf puts a part on paper: on one sheet, unless that would make the type
// too small. Each sheet can be read without the others.
func sheetsOf(m *align.CountMap, i int) []sheet {
	p := m.Parts[i]
	lines := linesOf(m.RowsOf(i))
	room := sheetRoom - moreHead(p.Part, spanOf(p)+", part 10 of 10, sheet 1 of 9", musicOf(p))
	size, pages := fit(lines, room)
	var out []sheet
	for n, page := range pages {
		more := fmt.Sprintf("part %d of %d", i+1, len(m.Parts))
		if len(pages) > 1 {
			more += fmt.Sprintf(", sheet %d of %d", n+1, len(pages))
		}
		out = append(out, sheet{Lines: page, Size: fmt.Sprintf("%dpt", size), More: more})
	}
	return out
}

// musicOf names the songs of a part as they are played.
func musicOf(p align.Part) []string {
	var out []string
	for _, t := range p.Tracks {
		switch {
		case t.Problem != "":
			out = append(out, titleOf(t)+": "+t.Problem)
		case t.Used:
			out = append(out, fmt.Sprintf("%s, %s BPM", titleOf(t), say.Num(t.Played, 1)))
		}
	}
	return out
}

// fit is the largest type in which all lines go on as few sheets as can be
// [pt], and the lines of each.
func fit(lines []line, room float64) (int, [][]line) {
	fewest := len(paged(lines, least, room))
	for size := largest; size > least; size-- {
		if pages := paged(lines, float64(size), room); len(pages) == fewest {
			return size, pages
		}
	}
	return least, paged(lines, least, room)
}

// paged fills sheets that have that much room with lines at a type size; a part
// without lines has an empty one.
func paged(lines []line, size, sheet float64) [][]line {
	pages := [][]line{nil}
	room := sheet
	for _, l := range lines {
		h := l.height(size) + padding
		last := len(pages) - 1
		if h > room && len(pages[last]) > 0 {
			pages, room, last = append(pages, nil), sheet, last+1
		}
		pages[last] = append(pages[last], l)
		room -= h
	}
	return pages
}

// height of a line at a type size [pt]: the move, beside or below it what
// belongs to it, and below that the notes.
func (l line) height(size float64) float64 {
	room := sheetWidth - clock*size
	small := below
	if l.Thin {
		size, small = size*thin, beside
	}
	place := where * size
	for _, w := range l.Where {
		place = max(place, width(w, size*small*light))
	}
	room -= place
	what, dose := width(l.What, size*letter), width(l.Dose, size*beside*letter)
	lines := 1.0
	if what+size/2+dose > room {
		lines = math.Ceil(what/room) + beside*math.Ceil(dose/room)
	}
	for _, n := range l.Notes {
		lines += below * math.Ceil(width(n, size*below*light)/room)
	}
	return lines * size * leading
}

// moreHead is what a heading takes beyond sheetHead, which has one line for
// the title with what stands beside it and one for the music [pt].
func moreHead(title, beside string, music []string) float64 {
	const large, small = 22.0, 11.0
	h := (wrapped(title, large*letter, sheetWidth) - 1) * large * leading
	if width(title, large*letter)+1.5*small+width(beside, small*light) > sheetWidth {
		h += small * 1.2
	}
	songs := wrapped(strings.Join(music, " \u2192\u00a0"), small*light, sheetWidth)
	return h + (songs-1)*small*1.2
}

// wrapped is how many lines a text takes, broken between words, or within one
// that is longer than a line.
func wrapped(text string, letter, room float64) float64 {
	lines, at := 1.0, 0.0
	for _, w := range strings.Fields(text) {
		n := width(w, letter)
		if at > 0 && at+letter+n > room {
			lines, at = lines+1, 0
		}
		if at > 0 {
			n += letter
		}
		for at += n; at > room && room > 0; at -= room {
			lines++
		}
	}
	return lines
}

// width of a text whose letters have a mean width.
func width(s string, letter float64) float64 { return float64(len([]rune(s))) * letter }
