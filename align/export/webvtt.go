package export

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// writeWebVTT writes what is done and what comes next as captions.
//
// Ref: W3C, WebVTT: The Web Video Text Tracks Format, section 4.
func writeWebVTT(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	vttHead(&b, m)
	for i, c := range captions(m) {
		vttCue(&b, i+1, c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// writeChapters writes a chapter for every part and, inside it, one for every
// item.
//
// Ref: W3C, WebVTT, section 4.6.3 (files of nested cues) and 4.6.5 (titles).
func writeChapters(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	vttHead(&b, m)
	n := 0
	for i, p := range m.Parts {
		if p.Seconds <= 0 {
			continue
		}
		for _, c := range append([]caption{{p.ClassTime, p.ClassTime + p.Seconds, []string{p.Part}}},
			itemsOf(m.RowsOf(i))...) {
			n++
			vttCue(&b, n, c)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// itemsOf joins the rows of every item: both sides, all passes, all rhythms.
func itemsOf(rows []align.Row) []caption {
	var all []caption
	var line int
	for _, r := range rows {
		if !r.Placed || !r.Kind.Work() || r.Seconds <= 0 {
			continue
		}
		name := strings.Join(slices.Concat([]string{r.Item}, turnOf(r), roundsOf(r)), ", ")
		if last := len(all) - 1; last >= 0 && line == r.Line && all[last].lines[0] == name {
			all[last].to = r.ClassTime + r.Seconds
			continue
		}
		line = r.Line
		all = append(all, caption{r.ClassTime, r.ClassTime + r.Seconds, []string{name}})
	}
	return all
}

// vttHead writes the signature, and for those who open the file in an editor
// the class, what has no place, and the cautions.
func vttHead(b *strings.Builder, m *align.CountMap) {
	b.WriteString("WEBVTT\n")
	for _, s := range slices.Concat([]string{m.Class}, unplaced(m), Cautions) {
		// A comment must not hold the arrow that makes a line a timing.
		if s = strings.ReplaceAll(say.OneLine(s), "-->", "-- >"); s != "" {
			fmt.Fprintf(b, "\nNOTE %s\n", s)
		}
	}
}

func vttCue(b *strings.Builder, n int, c caption) {
	fmt.Fprintf(b, "\n%d\n%s --> %s\n", n, stamp(c.from, '.'), stamp(c.to, '.'))
	for _, l := range c.lines {
		if l = say.OneLine(l); l == "" {
			l = "–"
		}
		b.WriteString(vttText.Replace(playerText.Replace(l)) + "\n")
	}
}

// vttText makes text mean itself: no tag, no entity, no arrow.
//
// Ref: W3C, WebVTT, section 4.2.2 (cue text span, HTML character references).
var vttText = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")

// stamp writes a time as hh:mm:ss.mmm, with the sign between seconds and
// milliseconds that the format wants.
func stamp(seconds float64, point rune) string {
	n := milliseconds(seconds)
	return fmt.Sprintf("%02d:%02d:%02d%c%03d", n/3600000, n/60000%60, n/1000%60, point, n%1000)
}

// unplaced names the items for which there is no music.
func unplaced(m *align.CountMap) []string {
	var names []string
	for _, r := range m.Rows {
		if !r.Placed && r.Kind.Work() {
			names = append(names, r.Item)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []string{"without a place on any music: " + strings.Join(names, ", ")}
}
