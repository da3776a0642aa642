package web

import (
	"fmt"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// onceOf is how much an item is, done through once.
func onceOf(rows []align.Row) string {
	if rows[0].Kind == align.BlockRow {
		return builtOf(rows)
	}
	var work, rest []align.Row
	for _, r := range rows {
		if r.Kind == rows[0].Kind {
			work = append(work, r)
		} else {
			rest = append(rest, r)
		}
	}
	if rest == nil {
		return dosesOf(work)
	}
	return dosesOf(work) + " with " + dosesOf(rest) + " rest"
}

// dosesOf lists the pieces of a set or the lengths of timed work in the order
// in which they are done. What it says of a side holds for that side alone.
func dosesOf(rows []align.Row) string {
	sides, of := bySide(rows)
	var said []string
	for _, side := range sides {
		var pieces []string
		for _, r := range of[side] {
			pieces = append(pieces, shortDose(r))
		}
		said = append(said, listed(", ", pieces...))
	}
	if len(sides) == 2 && said[0] == said[1] {
		return fmt.Sprintf("each side %s, %s first", said[0], sides[0])
	}
	for i, side := range sides {
		said[i] = listed(": ", side, said[i])
	}
	return strings.Join(said, "; ")
}

// bySide sorts rows by their sides, the one done first before the other.
func bySide(rows []align.Row) (sides []string, of map[string][]align.Row) {
	of = map[string][]align.Row{}
	for _, r := range rows {
		side := r.SideWords()
		if of[side] == nil {
			sides = append(sides, side)
		}
		of[side] = append(of[side], r)
	}
	return sides, of
}

// builtOf is how often a block is danced, and in how many stages. Where the
// stages differ in it, it is said of each.
func builtOf(rows []align.Row) string {
	stages := stagesOf(rows)
	first, last := rows[0], rows[len(rows)-1]
	each := passesOf(stages[0])
	if first.Stage == 0 {
		return each
	}
	built := say.Many(first.Stages, "stage")
	if len(stages) < first.Stages {
		built = stretch("stage", first.Stage, last.Stage, first.Stages)
	}
	switch {
	case !even(stages):
		each = ""
	case each != "" && len(stages) > 1:
		each = "each " + each
	}
	return listed(", ", built, each)
}

// even reports whether all stages are danced equally often.
func even(stages [][]align.Row) bool {
	for _, s := range stages {
		if passesOf(s) != passesOf(stages[0]) {
			return false
		}
	}
	return true
}

// stagesOf takes the passes of a block apart into its stages; one that is
// danced as written is a single one.
func stagesOf(rows []align.Row) [][]align.Row {
	var out [][]align.Row
	for i, r := range rows {
		if i == 0 || r.Stage != rows[i-1].Stage {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], r)
	}
	return out
}

// passesOf is how often a block is danced, each side by itself.
func passesOf(rows []align.Row) string {
	sides, of := bySide(rows)
	if len(rows) == 1 {
		return sides[0]
	}
	var said []string
	for _, side := range sides {
		n := len(of[side])
		times := "once"
		if n > 1 {
			times = say.Many(n, "time")
		}
		said = append(said, listed(" ", times, side))
	}
	if len(sides) > 1 && len(rows) > len(sides) {
		said = append(said, "in turn")
	}
	return strings.Join(said, ", ")
}
