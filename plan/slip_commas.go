package plan

import (
	"fmt"
	"regexp"
	"strings"
)

var semicolonAt = regexp.MustCompile(`\{[^}]*(;) *(?:` + slipKeys + `) *:`)

func semicolon(l *slipLine) (Problem, bool) {
	text := l.code()
	m := semicolonAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	at := runes(text, m)[2]
	p := l.problem(at, "a semicolon between two keys", "a comma parts them")
	l.put(at, 1, ",")
	return p, true
}

var missingCommaAt = regexp.MustCompile(
	`\{(?:[^}]*[,{] *)?(?:` + slipKeys + `): [^,{}\[\]:]*[^ ,{}\[\]:]( +)(` + slipKeys + `): `)

func missingComma(l *slipLine) (Problem, bool) {
	text := l.code()
	m := missingCommaAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	r := runes(text, m)
	key := text[m[4]:m[5]]
	p := l.problem(r[4], "a comma is missing before "+key, "a comma parts the keys between { and }: , "+key+":")
	l.put(r[2], 1, ", ")
	return p, true
}

var decimalCommaAt = regexp.MustCompile(
	`(?:time|setup|least|bpm|fine|too fast|too slow|path): *([0-9]+)(,)([0-9]+ *[a-z]*)(?: *[,}]| *$)`)

func decimalComma(l *slipLine) (Problem, bool) {
	text := l.code()
	m := decimalCommaAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	at := runes(text, m)[4]
	p := l.problem(at, "a comma in a number",
		fmt.Sprintf("%s.%s? The decimal sign is a point", text[m[2]:m[3]], text[m[6]:m[7]]))
	l.put(at, 1, ".")
	return p, true
}

var openCommaAt = regexp.MustCompile(
	`\{[^}]*(?:reps|cue|easier|harder|weight): *` +
		`([^"'{}\[\],: ][^{}\[\],:]*(?:, *[^{}\[\],: ][^{}\[\],:]*)+)(?:\}|, *(?:` + slipKeys + `) *:)`)

// openComma finds a text between { and } that has a comma in it and no quotes.
func openComma(l *slipLine) (Problem, bool) {
	text := l.code()
	m := openCommaAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	r := runes(text, m)
	end := r[2] + len([]rune(strings.TrimRight(text[m[2]:m[3]], " ")))
	comma := r[2] + strings.Index(text[m[2]:m[3]], ",")
	p := l.problem(comma, "the comma ends the text here", quoteIt("a comma", l.slice(r[2], end)))
	l.quote(r[2], end)
	return p, true
}

var openColonAt = regexp.MustCompile(
	`\{[^}]*(?:cue|easier|harder|weight|block|superset|pause): *([^"'{}\[\],: ][^{}\[\],:]*(:) [^{}\[\],]*)`)

// openColon finds a colon in a text between { and }.
func openColon(l *slipLine) (Problem, bool) {
	text := l.code()
	m := openColonAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	r := runes(text, m)
	end := r[2] + len([]rune(strings.TrimRight(text[m[2]:m[3]], " ")))
	p := l.problem(r[4], "a colon inside a text", quoteIt("a colon", l.slice(r[2], end)))
	l.quote(r[2], end)
	return p, true
}
