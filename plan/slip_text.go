package plan

import (
	"fmt"
	"regexp"
	"strings"
)

// quoteIt is the hint for text with a sign in it that means something to YAML.
func quoteIt(sign, text string) string {
	return fmt.Sprintf(`text with %s in it needs quotes: "%s"`, sign, short(text))
}

const curly = openQuotes + closeQuotes

var curlyAt = regexp.MustCompile(`[:,{\[-] *([` + curly + `])([^` + curly + `"]*)([` + closeQuotes + `"])`)

// curlyQuotes finds typographic quotes that were to hold a text together. Round
// plain text they are read.
func curlyQuotes(l *slipLine) (Problem, bool) {
	text := l.code()
	for _, m := range curlyAt.FindAllStringSubmatchIndex(text, -1) {
		inner := text[m[4]:m[5]]
		if !strings.ContainsAny(inner, ",#[]{}") && !strings.Contains(inner, ": ") {
			continue
		}
		r := runes(text, m)
		p := l.problem(r[2], "curly quotes do not hold a text together",
			fmt.Sprintf(`straight ones do: "%s"`, short(inner)))
		l.put(r[2], 1, `"`)
		l.put(r[6], 1, `"`)
		return p, true
	}
	return Problem{}, false
}

var backslashAt = regexp.MustCompile(`"([A-Za-z]:|[^"\\]*[^"\\ ][^"\\]*)(\\[A-Za-z][^"]*)"`)

var pathKey = regexp.MustCompile(`(?:music|tracks):`)

// backslash finds a path with \ between double quotes, where YAML reads codes:
// "C:\Users", "spring\new".
func backslash(l *slipLine) (Problem, bool) {
	text := string(l.text)
	m := backslashAt.FindStringSubmatchIndex(text)
	if m == nil || !pathKey.MatchString(text[:m[0]]) && !strings.HasSuffix(text[m[2]:m[3]], ":") {
		return Problem{}, false
	}
	r := runes(text, m)
	path := strings.ReplaceAll(strings.ReplaceAll(text[m[2]:m[5]], `\\`, `\`), `\`, "/")
	p := l.problem(r[4], `a \ between double quotes begins a code`, fmt.Sprintf(`/ goes everywhere: "%s"`, short(path)))
	l.put(r[2], r[5]-r[2], path)
	return p, true
}

var (
	apostropheAt = regexp.MustCompile(`(?:[:,{\[-] +|[{\[])(')[^']*(')\pL`)
	endsQuoted   = regexp.MustCompile(`'(?: *[,}\]]| *$| +#)`)
)

// apostrophe finds one inside a text in single quotes, which it ends.
func apostrophe(l *slipLine) (Problem, bool) {
	text := string(l.text)
	m := apostropheAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	end := endsQuoted.FindStringIndex(text[m[5]:])
	if end == nil {
		return Problem{}, false
	}
	last := m[5] + end[0]
	inner := text[m[3]:last]
	if strings.Contains(inner, `"`) {
		return Problem{}, false
	}
	r := runes(text, []int{m[2], m[4], last})
	p := l.problem(r[1], "the apostrophe ends the text that ' began",
		fmt.Sprintf(`double quotes let it stand: "%s"`, short(inner)))
	l.put(r[0], 1, `"`)
	l.put(r[2], 1, `"`)
	return p, true
}

var remarkAt = regexp.MustCompile(`[{\[][^#]* (#)[^\]}]*[\]}]`)

// remarkInList finds a # that makes the end of a list or an item a remark.
func remarkInList(l *slipLine) (Problem, bool) {
	text := string(l.text)
	m := remarkAt.FindStringSubmatchIndex(text)
	if m == nil || len(l.code()) != m[2] || !opened(text[:m[2]]) {
		return Problem{}, false
	}
	from := m[2] - len(lastValue(text[:m[2]]))
	end := m[2] + strings.IndexAny(text[m[2]:], ",]}")
	r := runes(text, []int{from, m[2], end})
	p := l.problem(r[1], "a # after a space begins a remark, and the rest of the line is not read",
		quoteIt("such a sign", l.slice(r[0], r[2])))
	l.quote(r[0], r[2])
	return p, true
}

// opened tells whether a bracket is open at the end of a text.
func opened(text string) bool {
	return strings.Count(text, "[")+strings.Count(text, "{") > strings.Count(text, "]")+strings.Count(text, "}")
}

// lastValue is the value that a text ends in the middle of.
func lastValue(text string) string {
	at := strings.LastIndexAny(text, ",[{") + 1
	if colon := strings.LastIndex(text, ": "); colon >= at {
		at = colon + 2
	}
	return strings.TrimLeft(text[at:], " ")
}

var bracketsAt = regexp.MustCompile(
	`^[^\[{]*\[(?:[^\[\]]*, *)?([^\s\[\],][^\[\],]*(\[)[^\[\]]*\][^\[\],]*)` + // in a list: [ferry [live].mp3]
		`|^ *- +((\[)[^\[\]:]*\] *[^\s#,\]}][^#]*)`) // at the beginning: - [live] ferry.mp3

// brackets finds [ and ] in a name, where YAML begins a list.
func brackets(l *slipLine) (Problem, bool) {
	text := l.code()
	m := bracketsAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	r := runes(text, m)
	from, end, sign := r[2], r[3], r[4]
	if from < 0 {
		from, end, sign = r[6], r[7], r[8]
	}
	end = from + len([]rune(strings.TrimRight(string(l.text[from:end]), " ")))
	p := l.problem(sign, "a [ in a name begins a list", quoteIt("such a sign", l.slice(from, end)))
	l.quote(from, end)
	return p, true
}

var firstSignAt = regexp.MustCompile("(?:[\\[,:-] +|\\[)([&*!%@`|>?][^,\\[\\]{}]*\\.[A-Za-z0-9]{3,4})(?: *[,\\]]| *$)")

// firstSign finds a file name that begins with a sign which means something to
// YAML.
func firstSign(l *slipLine) (Problem, bool) {
	text := l.code()
	m := firstSignAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	r := runes(text, m)
	p := l.problem(r[2], fmt.Sprintf("a name cannot begin with %c", l.text[r[2]]),
		quoteIt("such a sign", l.slice(r[2], r[3])))
	l.quote(r[2], r[3])
	return p, true
}
