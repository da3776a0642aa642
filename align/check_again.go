package align

import (
	"fmt"
	"strings"
)

var trackRepeated = Check{
	Code:     "track-repeated",
	Title:    "a track is played twice in a class",
	Why:      "It can be meant, as when the warm-up song comes back; unmeant, people notice.",
	Source:   "the class file",
	Severity: Note,
	Left:     "takes other music; it may be meant",
	find: func(l *placedClass) []Finding {
		first := map[string]string{} // part by track
		var again []string
		var f Finding
		for _, p := range l.parts {
			for i := range p.music {
				m := &p.music[i]
				was, twice := first[m.ref.File]
				if !twice {
					first[m.ref.File] = p.part.Name
					continue
				}
				if len(again) == 0 {
					f = p.about(Note, m.ref.Pos.Line)
				}
				again = append(again, fmt.Sprintf("%s in %s and in %s", m.ref.File, was, p.part.Name))
			}
		}
		if len(again) == 0 {
			return nil
		}
		f.Figures = map[string]float64{"repeats": float64(len(again))}
		f.Message = strings.Join(again, "; ")
		f.Fix = "leave it if it is meant; or another track"
		return []Finding{f}
	},
}
