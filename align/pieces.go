package align

import (
	"onphrase/beat"
	"onphrase/plan"
)

// piece is what becomes one row: a pass of a block, the repetitions of one
// rhythm, a stretch of timed work.
type piece struct {
	row     Row        // everything but where it falls
	reps    *plan.Reps // of a set
	seconds float64    // of timed work, when it was given in seconds
}

// run is pieces that follow each other without a wait; the first of them is
// placedRow on a phrase or an eight.
type run []piece

// counts is the length of a run as far as it is given in counts.
func (r run) counts() int {
	n := 0
	for _, p := range r {
		n += p.row.Counts
	}
	return n
}

// byClock reports whether a run of an item goes by the clock, not by the
// music. What is written in counts never does.
func (r run) byClock(it *plan.Item) bool {
	return it.On == plan.OnClock && r[0].seconds > 0
}

// runs takes an item apart: a block into its passes, a set into its sides.
func runs(it *plan.Item) []run {
	switch w := it.Work.(type) {
	case plan.Block:
		return blockRuns(it, w)
	case plan.Set:
		return setRuns(it, w)
	case plan.Interval:
		var out []run
		for _, side := range w.Sides.Each() {
			p := timed(it, IntervalRow, w.Time)
			p.row.Side, p.row.Weight = string(side), w.Weight
			out = append(out, run{p})
		}
		return out
	case plan.Pause:
		return []run{{timed(it, PauseRow, w.Time)}}
	}
	return nil
}

// blockRuns gathers passes into runs that fill whole phrases, or whole eights
// where the block is laid on those: two passes of 16 counts share a phrase.
func blockRuns(it *plan.Item, b plan.Block) []run {
	unit := beat.PhraseLen
	if snapOf(it) == plan.OnEight {
		unit = eight
	}
	passes := b.Passes()
	var out []run
	var r run
	for i, pass := range passes {
		row := rowOf(it, BlockRow)
		row.Side = string(pass.Side)
		row.Pass, row.Passes = i+1, len(passes)
		if row.Stages = pass.Stages; pass.Stages > 1 {
			row.Stage = pass.Stage
		}
		for _, m := range pass.Moves {
			row.Moves = append(row.Moves, Step{Move: m.Move, Count: row.Counts + 1, Counts: m.Counts, With: m.With})
			row.Counts += m.Counts
		}
		if r = append(r, piece{row: row}); r.counts()%unit == 0 || i == len(passes)-1 {
			out, r = append(out, r), nil
		}
	}
	return out
}

func setRuns(it *plan.Item, s plan.Set) []run {
	var out []run
	for _, side := range s.Sides.Each() {
		var r run
		for i := range s.Reps {
			reps := &s.Reps[i]
			row := rowOf(it, SetRow)
			row.Side, row.Weight, row.Range = string(side), s.Weight, s.Range
			row.Reps, row.Rhythm = reps.N, Rhythm{reps.Rhythm}
			row.Counts = reps.N * reps.Rhythm.Counts()
			r = append(r, piece{row: row, reps: reps})
		}
		out = append(out, r)
	}
	return out
}

func timed(it *plan.Item, kind RowKind, l plan.Length) piece {
	row := rowOf(it, kind)
	row.Counts = l.Counts
	row.ByClock = it.On == plan.OnClock && l.Seconds > 0
	return piece{row: row, seconds: l.Seconds}
}

func rowOf(it *plan.Item, kind RowKind) Row {
	row := Row{
		Kind: kind, Item: it.Name, Line: it.Pos.Line,
		Cue: it.Cue, Easier: it.Easier, Harder: it.Harder, Moves: []Step{},
	}
	for _, r := range it.Rounds {
		if r.Last > 1 {
			row.Rounds = append(row.Rounds, Round{Of: r.Of, Round: r.N, Rounds: r.Last, Series: r.Series})
		}
	}
	return row
}
