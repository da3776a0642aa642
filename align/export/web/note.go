package web

import (
	"fmt"
	"slices"

	"onphrase/align"
	"onphrase/plan/say"
)

// notesOf is what is read from nearer, each on a line of its own: the moves of
// a block, stage by stage where it is built up, and what else there is to know.
func notesOf(rows []align.Row, once int) []string {
	var out []string
	first := rows[0]
	moves := align.Sequence(first.Moves)
	if first.Stage > 0 {
		out, moves = stageNotes(stagesOf(rows[:once])), ""
	}
	words := []string{moves}
	for i := range first.Rounds {
		words = append(words, roundWords(first.Rounds[i], rows[len(rows)-1].Rounds[i]))
	}
	if n := rows[once-1].Pass - first.Pass + 1; first.Passes > n {
		words = append(words, stretch("pass", first.Pass, rows[once-1].Pass, first.Passes))
	}
	if first.ByClock {
		words = append(words, "by the clock, whatever the music does")
	}
	words = append(words, startsOf(rows)...)
	for _, said := range [][2]string{{"say", first.Cue}, {"easier", first.Easier}, {"harder", first.Harder}} {
		if said[1] != "" {
			words = append(words, said[0]+": "+said[1])
		}
	}
	if note := listed("; ", words...); note != "" {
		out = append(out, note)
	}
	return out
}

// stageNotes says how a block is built up. How often a stage is danced is said
// here where stages differ in it.
func stageNotes(stages [][]align.Row) []string {
	var out []string
	for _, s := range stages {
		head := []string{fmt.Sprintf("stage %d", s[0].Stage)}
		if s[0].Placed {
			head = append(head, say.Clock(s[0].ClassTime))
		}
		head = append(head, placeOf(s[0]))
		if !even(stages) {
			head = append(head, passesOf(s))
		}
		out = append(out, listed(", ", head...)+": "+align.Sequence(s[0].Moves))
	}
	return out
}

// roundWords says which of its rounds or turns an item is, from one to another.
func roundWords(from, to align.Round) string {
	of := from.Of
	switch {
	case from.Round == 1 && to.Round == from.Rounds && (from.Series || of == ""):
		return "" // all of them: that is said with the dose
	case from.Series:
		of = "turn"
	case of == "":
		of = "round"
	}
	return stretch(of, from.Round, to.Round, from.Rounds)
}

// stretch writes "stage 2 of 4", or "stage 2 to 3 of 4".
func stretch(noun string, from, to, of int) string {
	if from == to {
		return fmt.Sprintf("%s %d of %d", noun, from, of)
	}
	return fmt.Sprintf("%s %d to %d of %d", noun, from, to, of)
}

// startsOf says when the rests and the further rounds of an item begin.
func startsOf(rows []align.Row) []string {
	var out []string
	for i, r := range rows[1:] {
		what := "again"
		if r.Item != rows[0].Item {
			what = r.Item
		}
		if !r.Placed || r.Item == rows[i].Item && slices.Equal(r.Rounds, rows[i].Rounds) {
			continue // not known, or another piece or side of the same
		}
		out = append(out, listed(", ", say.Clock(r.ClassTime)+" "+what, placeOf(r)))
	}
	return out
}
