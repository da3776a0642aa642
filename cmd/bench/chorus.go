package main

import (
	"fmt"
	"io"
	"slices"

	"onphrase/beat/score"
)

// markBands part the trust of phrases for the tables of marks.
var markBands = []float64{0, 0.5, 0.7, 0.9, 1}

// reportMarks says how often the choruses of charts start with a phrase, and
// their other parts.
func reportMarks(w io.Writer, all []result) {
	for _, kind := range []string{chorus, part} {
		var list []found
		for _, r := range all {
			for _, f := range r.found {
				if f.kind == kind {
					list = append(list, f)
				}
			}
		}
		if len(list) > 0 {
			writeMarks(w, kind, list)
		}
	}
	writeMissed(w, all)
}

// writeMarks prints the shares, by the trust of the phrase, and how many counts
// after a phrase start the others lie.
func writeMarks(w io.Writer, kind string, list []found) {
	many := func(is func(found) bool) int {
		n := 0
		for _, f := range list {
			n += int(share(is(f)))
		}
		return n
	}
	fmt.Fprintf(w, "\n%s starts that charts mark on their count 1: %d; a phrase starts there %s, count 1 is there %s, "+
		"counting 32s from the first count 1 gets there %s\n", kind, len(list),
		portion(many(func(f found) bool { return f.start }), len(list)),
		portion(many(func(f found) bool { return f.one }), len(list)),
		portion(many(func(f found) bool { return f.rule }), len(list)))
	fmt.Fprintf(w, "by trust of the phrase they lie in (%d lie in none): marks, mean trust, share on its start\n",
		many(func(f found) bool { return !f.inside }))
	var claims []score.Claim
	late := map[int]int{}
	for _, f := range list {
		if f.inside {
			claims = append(claims, score.Claim{Trust: f.trust, Right: share(f.start)})
			if !f.start {
				late[f.late]++
			}
		}
	}
	score.WriteReliability(w, markBands, claims)
	writeOften(w, "the others lie so many counts after a phrase start (times):", late)
}

// writeMissed lists the choruses that start with no phrase.
func writeMissed(w io.Writer, all []result) {
	for _, r := range all {
		for _, f := range r.found {
			if f.kind == chorus && !f.start {
				fmt.Fprintf(w, "  %-30s %6.1f s  %s\n", r.id, f.time, f.miss())
			}
		}
	}
}

// miss says what is at a chorus where no phrase starts.
func (f found) miss() string {
	switch {
	case !f.inside:
		return "in no phrase"
	case !f.one:
		return fmt.Sprintf("%d counts into a phrase of trust %.2f, not on count 1", f.late, f.trust)
	}
	return fmt.Sprintf("%d counts into a phrase of trust %.2f", f.late, f.trust)
}

// writeOften lists numbers after a title, the most frequent first.
func writeOften(w io.Writer, title string, counts map[int]int) {
	if len(counts) == 0 {
		return
	}
	var keys []int
	for k := range counts {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, func(a, b int) int {
		if counts[a] != counts[b] {
			return counts[b] - counts[a]
		}
		return a - b
	})
	fmt.Fprint(w, title)
	for _, k := range keys {
		fmt.Fprintf(w, " %d (%d)", k, counts[k])
	}
	fmt.Fprintln(w)
}
