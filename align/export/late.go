package export

import (
	"fmt"
	"io"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// Late writes what to drop when a class runs late.
func Late(w io.Writer, m *align.CountMap, l align.Late, s Style) error {
	p := newPrinter(w, s)
	p.wrap(lateHead(m, l), "", bold)
	for _, way := range l.From {
		p.line("")
		p.wrap("About to begin "+m.Parts[way.Part].Part+":", "", plain)
		p.wrap(doWords(l, way), "  ", plain)
		if drop := dropWords(m, way); drop != "" {
			p.wrap("drop "+drop, "  ", plain)
		}
	}
	if len(l.From) == 0 {
		p.wrap("Nothing has to be dropped.", "", plain)
	}
	return p.Flush()
}

func lateHead(m *align.CountMap, l align.Late) string {
	left := say.Clock(l.Left) + " left"
	last := 0
	if len(m.Rows) > 0 {
		last = m.Rows[len(m.Rows)-1].Row
	}
	switch end := l.End; {
	case end.Last == 0 && l.Work > 0:
		return left + ", and the class has no cool-down to keep."
	case end.Last == 0:
		return left + ": too short for the first item of the cool-down."
	case end.Last < last:
		return fmt.Sprintf("%s: go to the cool-down now, rows %d to %d (%s); drop the rest of it.", left, end.First,
			end.Last, say.Clock(end.Seconds))
	case l.Work < 1:
		return left + ": go to the cool-down now."
	default:
		return fmt.Sprintf("%s: %s of it for the cool-down, %s before it.", left, say.Clock(end.Seconds),
			say.Clock(l.Work))
	}
}

func doWords(l align.Late, w align.Way) string {
	if w.Do.Last == 0 {
		return "go straight to the cool-down"
	}
	text := fmt.Sprintf("do rows %d to %d (%s", w.Do.First, w.Do.Last, say.Clock(w.Do.Seconds))
	if w.Do.Phrase > 0 {
		text += fmt.Sprintf(", to the end of phrase %d", w.Do.Phrase)
	}
	if free := l.Work - w.Do.Seconds; free >= 1 {
		text += fmt.Sprintf("; %s to spare", say.Clock(free))
	}
	return text + ")"
}

func dropWords(m *align.CountMap, w align.Way) string {
	var all []string
	if d := w.Drop; d.Last > 0 {
		rows := fmt.Sprintf("row %d", d.First)
		if d.Last > d.First {
			rows = fmt.Sprintf("rows %d to %d", d.First, d.Last)
		}
		all = append(all, rows)
	}
	for _, i := range w.Parts {
		all = append(all, "all of "+m.Parts[i].Part)
	}
	return strings.TrimSpace(say.And(all))
}
