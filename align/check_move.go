package align

import (
	"fmt"

	"onphrase/plan/say"
)

var moveCut = Check{
	Code:     "move-cut-off",
	Title:    "a move of a block gets counts that cut a repetition off",
	Why:      "The class is in the middle of a step when the next one is called, and on the wrong foot.",
	Source:   "counts of one repetition in the catalogue of moves: common practice, no source",
	Severity: Watch,
	Left:     "choreography is for you to change",
	find: func(l *placedClass) []Finding {
		var out []Finding
		l.each(func(_ *placedPart, _ int, r *placedRow) {
			if r.Kind != BlockRow {
				return
			}
			for _, s := range r.Moves {
				m, ok := l.move(s.Move)
				if !ok || m.Counts == 0 || s.Counts%m.Counts == 0 {
					continue
				}
				f := r.about(Watch)
				f.Figures = map[string]float64{"counts": float64(s.Counts), "counts_per_rep": float64(m.Counts)}
				f.Message = fmt.Sprintf("%s: %s of %s, one of which takes %d", r.Item, say.Many(s.Counts, "count"),
					s.Move, m.Counts)
				f.Fix = fmt.Sprintf("%d counts and the rest to its neighbours; or a move of %s",
					max(1, s.Counts/m.Counts)*m.Counts, say.Many(s.Counts, "count"))
				out = append(out, f)
				return // the next passes have the same moves
			}
		})
		return out
	},
}
