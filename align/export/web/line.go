package web

import (
	"fmt"
	"slices"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// line is an item on the sheet, with everything that belongs to it.
type line struct {
	Time  string
	What  string
	Dose  string
	Notes []string // read from nearer: the moves, how a block is built, what to say
	Where []string // its place in the music and its length
	Thin  bool     // nothing is taught in it
}

// linesOf puts on one line what is one line of the class file: the passes of a
// block, the pieces and sides of a set, rounds that are alike, the turns of a
// series with their rests.
func linesOf(rows []align.Row) []line {
	var out []line
	for len(rows) > 0 {
		once := roundOf(rows)
		n := once
		for roundOf(rows[n:]) == once && alike(rows[:once], rows[n:n+once]) {
			n += once
		}
		out = append(out, lineOf(rows[:n], once))
		rows = rows[n:]
	}
	return out
}

// roundOf is how many of the rows are the first item, done through once.
func roundOf(rows []align.Row) int {
	if len(rows) == 0 || !rows[0].Kind.Work() || rows[0].Line == 0 {
		return min(len(rows), 1)
	}
	first, n := rows[0], 1
	for n < len(rows) && rows[n].Line == first.Line && slices.Equal(rows[n].Rounds, first.Rounds) &&
		(sameItem(first, rows[n]) || isTurn(first) && rows[n].Kind == align.PauseRow) {
		n++
	}
	return n
}

func sameItem(a, b align.Row) bool {
	return a.Kind == b.Kind && a.Item == b.Item && a.Line == b.Line && a.Weight == b.Weight && a.Range == b.Range
}

// isTurn reports whether a row is the work of a series; its rest follows.
func isTurn(r align.Row) bool {
	return r.Kind == align.IntervalRow && len(r.Rounds) > 0 && r.Rounds[len(r.Rounds)-1].Series
}

// alike reports whether two rounds of an item differ in nothing but when they
// are done.
func alike(a, b []align.Row) bool {
	outer := len(a[0].Rounds) - 1
	if outer < 0 || len(b[0].Rounds) != outer+1 || !slices.Equal(a[0].Rounds[:outer], b[0].Rounds[:outer]) {
		return false
	}
	for i := range a {
		if !a[i].Kind.Work() || !sameItem(a[i], b[i]) || a[i].Side != b[i].Side || a[i].Pass != b[i].Pass ||
			shortDose(a[i]) != shortDose(b[i]) {
			return false
		}
	}
	return true
}

// lineOf tells rows that belong together, the first of them once through.
func lineOf(rows []align.Row, once int) line {
	first := rows[0]
	l := line{Time: "?", What: first.Item, Notes: notesOf(rows, once), Thin: !first.Kind.Work()}
	if first.Placed {
		l.Time = say.Clock(first.ClassTime)
	}
	doses := []string{repeated(onceOf(rows[:once]), len(rows)/once, isTurn(first)), first.Weight, first.RangeWords()}
	l.Dose = listed(", ", doses...)
	counts := 0
	for _, r := range rows {
		counts += r.Counts
	}
	if place := placeOf(first); place != "" {
		l.Where = append(l.Where, place)
	}
	if counts > 0 {
		l.Where = append(l.Where, say.Many(counts, "count"))
	}
	if l.Thin && len(l.Where) > 0 {
		l.Where = []string{strings.Join(l.Where, ", ")}
	}
	return l
}

// placeOf is where in the music a row begins; count 1 goes without saying.
func placeOf(r align.Row) string {
	switch {
	case r.Phrase == 0:
		return ""
	case r.Count == 1:
		return fmt.Sprintf("phrase %d", r.Phrase)
	}
	return fmt.Sprintf("phrase %d, count %d", r.Phrase, r.Count)
}

// repeated says how often a dose is done.
func repeated(dose string, times int, series bool) string {
	switch {
	case times == 1:
		return dose
	case series:
		return fmt.Sprintf("%d x %s", times, dose)
	case dose == "":
		return say.Many(times, "round")
	}
	return fmt.Sprintf("%s of %s", say.Many(times, "round"), dose)
}

// listed joins what is not empty.
func listed(sep string, words ...string) string {
	return strings.Join(slices.DeleteFunc(words, func(s string) bool { return s == "" }), sep)
}
