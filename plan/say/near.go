package say

import (
	"strings"
	"unicode"
)

// Nearest finds the candidate that a mistyped word most likely meant: the
// fewest slips of the hand (letter left out, added, changed, or two swapped),
// and no more than a third of the word. Of several equally near it is the
// first.
//
// Ref: the restricted Damerau-Levenshtein distance (optimal string
// alignment).
func Nearest(word string, candidates []string) (string, bool) {
	typed := []rune(Fold(word))
	best, fewest := "", maxSlips(len(typed))+1
	for _, c := range candidates {
		if d := slips(typed, []rune(Fold(c)), fewest); d < fewest {
			best, fewest = c, d
		}
	}
	return best, best != ""
}

// maxSlips is how many slips a word may have and still be recognised.
func maxSlips(length int) int {
	if length < 3 {
		return min(length, 1)
	}
	return max(1, min(length/3, 4))
}

// slips counts the slips between two words, or returns limit when there are
// that many or more.
func slips(a, b []rune, limit int) int {
	if diff := len(a) - len(b); diff >= limit || -diff >= limit {
		return limit
	}
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := last[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return min(last[len(b)], limit)
}

// Fold reduces a word to its letters and digits in lower case, so that
// "Warm up", "warm-up" and "WARMUP" are one.
func Fold(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsNumber(r) || unicode.IsMark(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}
