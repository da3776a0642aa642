package export

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// Style is how text is laid out.
type Style struct {
	Color bool   // only for a terminal; nothing is said by colour alone
	Width int    // columns, 0 for 80
	File  string // the class file's name, for the lines findings point to

	Details bool // figures and source below each finding
}

// width of text when none is given: a terminal, or a page of small print.
const usualWidth = 80

func writeText(w io.Writer, m *align.CountMap) error { return Text(w, m, Style{}) }

// Text writes the map as a person teaches from it: part by part, a line a
// row, then the findings and the cautions.
func Text(w io.Writer, m *align.CountMap, s Style) error {
	p := newPrinter(w, s)
	p.title(m)
	widths := p.widths(m.Rows) // the same for every part, so that the eye finds its column
	for i, part := range m.Parts {
		p.part(part)
		p.table(m.RowsOf(i), widths)
	}
	p.figures(m)
	p.line("")
	p.findings(m)
	p.line("")
	for _, c := range Cautions {
		p.wrap(c, "", dim)
	}
	return p.Flush()
}

// Findings writes only the findings, as the check command shows them.
func Findings(w io.Writer, m *align.CountMap, s Style) error {
	p := newPrinter(w, s)
	p.findings(m)
	return p.Flush()
}

// printer writes lines no wider than its style allows.
type printer struct {
	*bufio.Writer
	Style
}

func newPrinter(w io.Writer, s Style) *printer {
	if s.Width <= 0 {
		s.Width = usualWidth
	}
	s.Width = max(s.Width, 40)
	return &printer{bufio.NewWriter(w), s}
}

// ink is a way to set text apart: ANSI SGR parameters (ECMA-48).
type ink string

const (
	plain  ink = ""
	bold   ink = "1"
	dim    ink = "2"
	red    ink = "1;31"
	yellow ink = "33"
)

func (p *printer) paint(s string, i ink) string {
	if !p.Color || i == plain || s == "" {
		return s
	}
	return "\x1b[" + string(i) + "m" + s + "\x1b[0m"
}

func (p *printer) line(s string) { fmt.Fprintln(p, strings.TrimRight(s, " ")) }

// wrap writes text over as many lines as it needs, each after indent.
func (p *printer) wrap(s, indent string, i ink) {
	for _, l := range say.Wrap(s, p.Width-say.Columns(indent)) {
		p.line(indent + p.paint(l, i))
	}
}

// ends writes left and right text at the two ends of a line.
func (p *printer) ends(left, right string, i ink) {
	lines := say.Wrap(left, p.Width-say.Columns(right)-2)
	for n, l := range lines {
		if n == 0 {
			l = say.Pad(l, p.Width-say.Columns(right)) + right
		}
		p.line(p.paint(l, i))
	}
}

func (p *printer) title(m *align.CountMap) {
	right := say.Clock(m.Length)
	if m.Slot > 0 {
		right += " of " + say.Clock(m.Slot)
	}
	p.ends(m.Class, right, bold)
	p.line(strings.Repeat("-", p.Width))
}

func (p *printer) part(part align.Part) {
	p.line("")
	p.ends(part.Part, span(part), bold)
	for _, t := range part.Tracks {
		p.wrap(musicLine(t), "  ", plain)
	}
	p.line("")
}

// figures writes what the class comes to, labels to the left.
func (p *printer) figures(m *align.CountMap) {
	const room = len("shares  ")
	all := classFigures(m)
	if len(all) == 0 {
		return
	}
	p.line("")
	for _, f := range all {
		for n, l := range say.Wrap(say.OneLine(f.text), p.Width-room) {
			label := f.label
			if n > 0 {
				label = ""
			}
			p.line(p.paint(say.Pad(label, room), dim) + l)
		}
	}
}

func (p *printer) findings(m *align.CountMap) {
	p.wrap(firstThing(m), "", bold)
	if len(m.Findings) > 0 {
		p.wrap(summary(m.Findings), "", plain)
	}
	for _, f := range m.Findings {
		p.finding(f)
	}
	if len(m.Known) == 0 {
		return
	}
	p.line("")
	p.wrap(fmt.Sprintf("Yours, not counted: %s you stand by.", say.Many(len(m.Known), "finding")), "", bold)
	for _, f := range m.Known {
		p.finding(f)
	}
}

// finding writes where it is, what it is, and what helps.
func (p *printer) finding(f align.Finding) {
	p.line("")
	for n, l := range say.Wrap(strings.Join(p.whereabouts(f), ", "), p.Width-6) {
		grade := string(f.Severity)
		if n > 0 {
			grade = ""
		}
		p.line(p.paint(say.Pad(grade, 6), inkOf(f.Severity)) + l)
	}
	p.wrap(f.Message, "      ", plain)
	if f.Reason != "" {
		p.wrap("you: "+f.Reason, "      ", plain)
	} else if f.Fix != "" {
		p.wrap("try: "+f.Fix, "      ", plain)
	}
	if p.Details {
		p.wrap("figures: "+figuresOf(f), "      ", dim)
		p.wrap("source: "+f.Source, "      ", dim)
	}
}

// whereabouts says what a finding is about and where to look.
func (p *printer) whereabouts(f align.Finding) []string {
	out := []string{f.Code}
	if f.Part != "" {
		out = append(out, f.Part)
	}
	if f.Row > 0 {
		out = append(out, f.Rows())
	}
	if f.Line > 0 {
		at := fmt.Sprintf("line %d", f.Line)
		if p.File != "" {
			at = fmt.Sprintf("%s:%d", p.File, f.Line)
		}
		out = append(out, at)
	}
	return out
}

func inkOf(s align.Severity) ink {
	switch s {
	case align.Fix:
		return red
	case align.Watch:
		return yellow
	}
	return dim
}
