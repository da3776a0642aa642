package plan

import (
	"fmt"
	"regexp"
	"strings"
)

// slipKinds find one slip each, mend it in the line and say what it was. The
// order matters: spaces and signs first, as the others look for plain ones.
var slipKinds = []func(*slipLine) (Problem, bool){
	oddSpace, oddSign, oddDash, tabAfterDash, noSpaceAfterDash, curlyQuotes, backslash, apostrophe, remarkInList,
	capitalKey, equalsSign, noSpaceAfterColon, semicolon, missingComma, decimalComma, openComma, openColon,
	brackets, firstSign,
}

// slipKeys are the keys of our files.
const slipKeys = `add|also|ballistic|bands|becomes|block|bpm|build|class|counts|cue|do|down|easier|equipment|` +
	`evidence|facing|fine|for|harder|hold|impact|inside|interval|kind|known|layers|least|limits|move|moves|music|name|needs|on|` +
	`one-sided|onphrase|outer|part|parts|path|pattern|pause|range|repeat|reps|rounds|series|set|setup|sides|slot|source|` +
	`start|superset|switches|taught|time|times|too fast|too slow|tracks|up|weight`

// keyPlace is where a key may begin: a line, an item, or after { and a comma.
const keyPlace = `(?:^ *(?:- +)*|[{,] *)`

// oddSpaces look like a space or like nothing.
const oddSpaces = `\x{00a0}\x{1680}\x{2000}-\x{200d}\x{202f}\x{205f}\x{2060}\x{3000}\x{feff}`

var oddSpaceAt = regexp.MustCompile(
	`^(?:[ ` + oddSpaces + `]*-? *)([` + oddSpaces + `])|[:{,\[] *([` + oddSpaces + `])|([` + oddSpaces + `]) *[:}\]]`)

func oddSpace(l *slipLine) (Problem, bool) {
	text := string(l.text)
	m := oddSpaceAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	at := firstGroup(runes(text, m))
	p := l.problem(at, fmt.Sprintf("a sign that looks like a space and is none (U+%04X)", l.text[at]),
		"from a web page? Delete it and press the space bar")
	for i, c := range l.text { // all of the line, said once
		if strings.ContainsRune("\u200b\u200c\u200d\u2060\ufeff", c) || !oddSpaceRune.MatchString(string(c)) {
			continue
		}
		l.put(i, 1, " ")
	}
	for i := len(l.text) - 1; i >= 0; i-- {
		if oddSpaceRune.MatchString(string(l.text[i])) {
			l.put(i, 1, "")
		}
	}
	return p, true
}

var oddSpaceRune = regexp.MustCompile(`[` + oddSpaces + `]`)

// firstGroup is where the first group that matched begins.
func firstGroup(m []int) int {
	for i := 2; i < len(m); i += 2 {
		if m[i] >= 0 {
			return m[i]
		}
	}
	return m[0]
}

// wideSigns are the full-width signs of East Asian keyboards and what they
// stand for.
var wideSigns = map[rune]string{
	'：': ": ", '，': ", ", '｛': "{", '｝': "}", '［': "[", '］': "]", '－': "-",
}

var wideAt = regexp.MustCompile(
	keyPlace + `(?:` + slipKeys + `) *(：)|(，) *(?:` + slipKeys + `) *[:：]|^ *(?:- *)?([｛［－])|([｝］]) *$`)

func oddSign(l *slipLine) (Problem, bool) {
	text := l.code()
	m := wideAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	at := firstGroup(runes(text, m))
	sign := l.text[at]
	p := l.problem(at, fmt.Sprintf("a full-width sign, %c", sign), "the plain one: "+strings.TrimSpace(wideSigns[sign]))
	l.put(at, 1, wideSigns[sign])
	return p, true
}

var oddDashAt = regexp.MustCompile(`^ *([‐‑‒–—−•·‣▪*]) *(?:[{\["']|(?:` + slipKeys + `) *:)`)

func oddDash(l *slipLine) (Problem, bool) {
	text := string(l.text)
	m := oddDashAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	at := runes(text, m)[2]
	p := l.problem(at, fmt.Sprintf("the sign %c does not begin an item", l.text[at]), "a plain hyphen and a space: - ")
	l.put(at, 1, "-")
	if l.text[at+1] != ' ' {
		l.put(at+1, 0, " ")
	}
	return p, true
}

var tabAfterDashAt = regexp.MustCompile(`^ *-( *\t[ \t]*)`)

func tabAfterDash(l *slipLine) (Problem, bool) {
	text := string(l.text)
	m := tabAfterDashAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	p := l.problem(m[2], "a tab after -", "one space: - ")
	l.put(m[2], m[3]-m[2], " ")
	return p, true
}

var noSpaceAfterDashAt = regexp.MustCompile(`^ *-((?:[{\["']|(?i:` + slipKeys + `) *:).*)`)

func noSpaceAfterDash(l *slipLine) (Problem, bool) {
	text := string(l.text)
	m := noSpaceAfterDashAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	p := l.problem(m[2], "no space after the - that begins an item", "- "+short(strings.TrimSpace(text[m[2]:m[3]])))
	l.put(m[2], 0, " ")
	return p, true
}

var capitalKeyAt = regexp.MustCompile(keyPlace + `([A-Za-z][A-Za-z-]*) *:(?: |$)`)

func capitalKey(l *slipLine) (Problem, bool) {
	text := l.code()
	for _, m := range capitalKeyAt.FindAllStringSubmatchIndex(text, -1) {
		key := text[m[2]:m[3]]
		small := strings.ToLower(key)
		if key == small || !isSlipKey.MatchString(small) {
			continue
		}
		r := runes(text, m)
		p := l.problem(r[2], fmt.Sprintf("the key %s is written small", key), small+":")
		l.put(r[2], r[3]-r[2], small)
		return p, true
	}
	return Problem{}, false
}

var isSlipKey = regexp.MustCompile(`^(?:` + slipKeys + `)$`)

var equalsAt = regexp.MustCompile(keyPlace + `(?:` + slipKeys + `)( *= *)`)

func equalsSign(l *slipLine) (Problem, bool) {
	text := l.code()
	m := equalsAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	r := runes(text, m)
	at := r[2] + strings.Index(text[m[2]:m[3]], "=")
	p := l.problem(at, "= stands where a key ends", "a colon and a space: key: value")
	l.put(r[2], r[3]-r[2], ": ")
	return p, true
}

var noSpaceAfterColonAt = regexp.MustCompile(keyPlace + `((?i:` + slipKeys + `):)([^\s/\\].*)`)

func noSpaceAfterColon(l *slipLine) (Problem, bool) {
	text := l.code()
	m := noSpaceAfterColonAt.FindStringSubmatchIndex(text)
	if m == nil {
		return Problem{}, false
	}
	r := runes(text, m)
	value, _, _ := strings.Cut(string(l.text[r[4]:]), ",")
	p := l.problem(r[3]-1, "no space after the colon", text[m[2]:m[3]]+" "+short(strings.TrimRight(value, "} ")))
	l.put(r[3], 0, " ")
	return p, true
}
