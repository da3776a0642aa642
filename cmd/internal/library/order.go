package library

import (
	"cmp"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// ByNature orders names as people do: digits by the number they make ("track
// 2" before "track 10", "00" before "01"), letters whatever their case and
// accents. Names that are alike so far keep the order of their bytes.
func ByNature(a, b string) int {
	x, y := plainLetters(a), plainLetters(b)
	for x != "" && y != "" {
		var p, q string
		p, x = nextPiece(x)
		q, y = nextPiece(y)
		if c := comparePieces(p, q); c != 0 {
			return c
		}
	}
	return cmp.Or(cmp.Compare(len(x), len(y)), strings.Compare(a, b))
}

// plainLetters is a name in small letters without accents.
func plainLetters(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return unicode.ToLower(r)
	}, norm.NFD.String(name))
}

// nextPiece cuts off the number or the single letter that text begins with.
func nextPiece(text string) (piece, rest string) {
	for i, r := range text {
		if r < '0' || r > '9' {
			if i > 0 { // a number has ended
				return text[:i], text[i:]
			}
			n := len(string(r))
			return text[:n], text[n:]
		}
	}
	return text, ""
}

// comparePieces orders two numbers by their value, anything else by its
// letters.
func comparePieces(p, q string) int {
	number := func(s string) bool { return s[0] >= '0' && s[0] <= '9' }
	if number(p) && number(q) {
		p, q = strings.TrimLeft(p, "0"), strings.TrimLeft(q, "0")
		return cmp.Or(cmp.Compare(len(p), len(q)), strings.Compare(p, q))
	}
	return strings.Compare(p, q)
}
