package align

import (
	"cmp"
	"fmt"
	"slices"
)

// fold makes one finding of those of a part that say the same: of one line of the class
// file on one track in every round and repeat, on both sides; and of items that
// differ in nothing that is said; and of one move in one rhythm, whatever the
// number of repetitions and the tempo: there the fastest music goes first.
func (l *placedClass) fold(all []Finding) []Finding {
	type key struct {
		code, part, said string
		severity         Severity
	}
	written := map[int]int{} // where the work of a line is written, for one that repeats another
	rows := map[int]Row{}
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		rows[r.Row.Row] = r.Row
		if r.item != nil && r.item.Repeats.Line > 0 {
			written[r.Line] = r.item.Repeats.Line
		}
	})
	first := map[key]int{}
	out := []Finding{}
	for _, f := range all {
		r := rows[f.Row]
		line := cmp.Or(written[f.Line], f.Line)
		same := key{f.Code, f.Part, fmt.Sprint(line, r.Track, r.Item, r.Reps, r.Rhythm), f.Severity}
		alike := key{f.Code, f.Part, f.Message + f.Fix, f.Severity}
		if f.Code == rhythmTooFast.Code {
			alike.said = fmt.Sprint(r.Item, r.Rhythm, r.Range)
		}
		i, again := first[same]
		if !again || f.Line == 0 {
			i, again = first[alike]
		}
		if !again || f.Row == out[i].Row || f.Row == 0 {
			first[same], first[alike] = len(out), len(out)
			out = append(out, f)
			continue
		}
		out[i] = joined(out[i], f)
	}
	return out
}

// joined is one finding of two that have the same cause.
func joined(a, b Finding) Finding {
	if a.Code == rhythmTooFast.Code && b.Figures["bpm"] > a.Figures["bpm"] {
		a, b = b, a
	}
	for _, row := range append([]int{b.Row}, b.Also...) {
		if row != a.Row && !slices.Contains(a.Also, row) {
			a.Also = append(a.Also, row)
		}
	}
	slices.Sort(a.Also)
	return a
}

// oneCause leaves out what only follows from another finding: a wait behind an
// item that ends inside its phrase, or across an odd one, is said there.
func (l *placedClass) oneCause(all []Finding) []Finding {
	caused := map[int]bool{} // rows whose end is explained
	for _, f := range all {
		if f.Code == spareCounts.Code || f.Code == oddPhrase.Code {
			caused[f.Row] = true
		}
	}
	return slices.DeleteFunc(all, func(f Finding) bool {
		return f.Code == classWaits.Code && caused[f.Row-1]
	})
}
