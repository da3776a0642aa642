package align

import "fmt"

var inThree = Check{
	Code:  "in-three",
	Title: "the music goes in threes",
	Why: "Eights fall on every beat of the bar in turn: nothing that is counted in eights lands on the music's " +
		"own one.",
	Source:   "the analysis of the track",
	Severity: Watch,
	Left:     "takes other music",
	find: func(l *placedClass) []Finding {
		var out []Finding
		seen := map[*music]bool{}
		l.each(func(_ *placedPart, _ int, r *placedRow) {
			if r.music == nil || seen[r.music] || r.music.grid.track.Meter != 3 {
				return
			}
			seen[r.music] = true
			f := r.about(Watch)
			f.Line = r.music.ref.Pos.Line
			f.Figures = map[string]float64{"counts_per_bar": 3}
			f.Message = fmt.Sprintf("%s has three counts to a bar; sets and blocks in eights will not sit on it",
				r.Track)
			f.Fix = "another track; or stretches and timed work with on: clock"
			out = append(out, f)
		})
		return out
	},
}
