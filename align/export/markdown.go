package export

import (
	"fmt"
	"io"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// writeMarkdown writes a table a part, the class in figures, the findings as
// a list, and the cautions.
func writeMarkdown(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\n%s", escape(m.Class), say.Clock(m.Length))
	if m.Slot > 0 {
		fmt.Fprintf(&b, " of %s", say.Clock(m.Slot))
	}
	b.WriteString("\n")
	for i, part := range m.Parts {
		markdownPart(&b, part)
		if rows := m.RowsOf(i); len(rows) > 0 {
			markdownTable(&b, rows)
		}
	}
	markdownFigures(&b, m)
	markdownFindings(&b, m)
	b.WriteString("\n## Cautions\n\n")
	for _, c := range Cautions {
		fmt.Fprintf(&b, "- %s\n", escape(c))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func markdownPart(b *strings.Builder, part align.Part) {
	fmt.Fprintf(b, "\n## %s\n\n", escape(part.Part))
	for _, t := range part.Tracks {
		fmt.Fprintf(b, "- %s\n", escape(musicLine(t)))
	}
	fmt.Fprintf(b, "- in the class: %s\n", span(part))
}

func markdownTable(b *strings.Builder, rows []align.Row) {
	b.WriteString("\n|")
	for _, c := range tableColumns {
		fmt.Fprintf(b, " %s |", c.head)
	}
	b.WriteString("\n|")
	for _, c := range tableColumns {
		if c.right {
			b.WriteString(" ---: |")
		} else {
			b.WriteString(" --- |")
		}
	}
	b.WriteString("\n")
	for n, r := range rows {
		b.WriteString("|")
		for i, c := range tableColumns {
			text := escape(c.cell(r))
			if i == what {
				text = escape(itemOf(r))
			}
			if details := append(detailsOf(r), soFar(rows, n)...); i == what && len(details) > 0 {
				text += "<br>" + escape(strings.Join(details, "; "))
			}
			fmt.Fprintf(b, " %s |", text)
		}
		b.WriteString("\n")
	}
}

func markdownFigures(b *strings.Builder, m *align.CountMap) {
	all := classFigures(m)
	if len(all) == 0 {
		return
	}
	b.WriteString("\n## The class in figures\n\n")
	for _, f := range all {
		fmt.Fprintf(b, "- **%s** %s\n", f.label, escape(f.text))
	}
}

func markdownFindings(b *strings.Builder, m *align.CountMap) {
	fmt.Fprintf(b, "\n## Findings\n\n%s", escape(firstThing(m)))
	if len(m.Findings) > 0 {
		fmt.Fprintf(b, " %s\n", escape(summary(m.Findings)))
	}
	b.WriteString("\n")
	for _, f := range m.Findings {
		markdownFinding(b, f)
	}
	if len(m.Known) == 0 {
		return
	}
	b.WriteString("\n### Yours, not counted\n\n")
	for _, f := range m.Known {
		markdownFinding(b, f)
	}
}

func markdownFinding(b *strings.Builder, f align.Finding) {
	where := f.Part
	if f.Row > 0 {
		where = strings.TrimPrefix(where+", "+f.Rows(), ", ")
	}
	fmt.Fprintf(b, "- **%s** %s: %s", f.Severity, escape(where), escape(f.Message))
	if f.Reason != "" {
		fmt.Fprintf(b, ". You: %s", escape(f.Reason))
	} else if f.Fix != "" {
		fmt.Fprintf(b, ". Try: %s", escape(f.Fix))
	}
	b.WriteString("\n")
}

// escape makes text from files mean itself in Markdown.
//
// Ref: CommonMark 0.31, section 2.4: any ASCII punctuation may be escaped.
func escape(s string) string {
	var b strings.Builder
	for _, r := range say.OneLine(s) {
		if strings.ContainsRune("\\`*_[]<>#|~&!$", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
