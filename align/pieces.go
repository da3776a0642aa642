package align

import "onphrase/plan"

// piece is what becomes one row: a pass of a block, the repetitions of one
// rhythm, a stretch of timed work.
type piece struct {
	row     Row        // everything but where it falls
	reps    *plan.Reps // of a set
	seconds float64    // of timed work, when it was given in seconds
}

// run is pieces that follow each other without a wait; the first of them is
// laid on a phrase or an eight.
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
		return []run{{timed(it, IntervalRow, w.Time)}}
	case plan.Pause:
		return []run{{timed(it, PauseRow, w.Time)}}
	}
	return nil
}

func blockRuns(it *plan.Item, b plan.Block) []run {
	sides := sidesOf(b.Sides)
	times := max(1, b.Times)
	var out []run
	for pass := range times * len(sides) {
		row := rowOf(it, BlockRow)
		row.Side = sides[pass%len(sides)]
		row.Pass, row.Passes = pass+1, times*len(sides)
		for _, m := range b.Moves {
			row.Moves = append(row.Moves, Step{Move: m.Move, Count: row.Counts + 1, Counts: m.Counts})
			row.Counts += m.Counts
		}
		out = append(out, run{{row: row}})
	}
	return out
}

func setRuns(it *plan.Item, s plan.Set) []run {
	var out []run
	for _, side := range sidesOf(s.Sides) {
		var r run
		for i := range s.Reps {
			reps := &s.Reps[i]
			row := rowOf(it, SetRow)
			row.Side, row.Weight, row.Range = side, s.Weight, string(s.Range)
			row.Reps, row.Rhythm = reps.N, reps.Rhythm.String()
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
	return piece{row: row, seconds: l.Seconds}
}

func rowOf(it *plan.Item, kind RowKind) Row {
	return Row{
		Kind: kind, Item: it.Name, Line: it.Pos.Line,
		Cue: it.Cue, Easier: it.Easier, Harder: it.Harder, Moves: []Step{},
	}
}

// sidesOf lists the sides in the order they are done.
func sidesOf(s plan.Sides) []string {
	switch s {
	case plan.Both:
		return []string{string(plan.Right), string(plan.Left)}
	case plan.Right, plan.Left:
		return []string{string(s)}
	}
	return []string{""}
}
