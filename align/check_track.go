package align

import (
	"fmt"

	"onphrase/plan"
	"onphrase/plan/say"
)

var trackMissing = Check{
	Code:  "track-missing",
	Title: "a track could not be used",
	Why: "Without its counts nothing can be placed on it: rows have no phrase, count or time, and the class " +
		"looks shorter than it is.",
	Source:   "the analysis of the file",
	Severity: Fix,
	Left:     "without its counts nothing can be laid on it: another file",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			for i := range p.music {
				if m := &p.music[i]; m.grid == nil {
					out = append(out, p.missing(m))
				}
			}
		}
		return out
	},
}

func (p *placedPart) missing(m *music) Finding {
	f := p.about(Fix, m.ref.Pos.Line)
	items := 0
	if len(p.rows) > 0 && p.rows[0].music == nil {
		items = len(p.part.Items)
	}
	f.Message = fmt.Sprintf("%s: %s", m.ref.File, m.problem)
	if items > 0 {
		f.Message += fmt.Sprintf("; %s of %s without a place on any music", say.Many(items, "item"), p.part.Name)
	}
	f.Figures = map[string]float64{"items_without_place": float64(items)}
	f.Fix = "put the file into the class's music folder or name another track; onphrase analyze says what it hears " +
		"in a file"
	return f
}

var startMissing = Check{
	Code:  "start-missing",
	Title: "a part starts where the track has no music",
	Why: "The part begins on its first trusted phrase instead, so everything in it comes at another time than " +
		"planned.",
	Source:   "the track's own list of phrases",
	Severity: Fix,
	Left:     "no phrase of this track is a better start",
	find: func(l *placedClass) []Finding {
		var out []Finding
		for _, p := range l.parts {
			if p.noStart {
				out = append(out, p.startFinding())
			}
		}
		return out
	},
}

func (p *placedPart) startFinding() Finding {
	f := p.about(Fix, p.part.Start.Pos.Line)
	g := p.rows[0].music.grid
	last := len(g.phrases) - 1
	f.Figures = map[string]float64{"phrases": float64(last), "counts": float64(g.end() - g.phrases[0].counts),
		"duration_seconds": g.duration}
	f.Message = fmt.Sprintf("%s starts on %s, but %s has %s, %s and lasts %s",
		p.part.Name, startWords(p.part.Start), p.rows[0].Track, say.Many(last, "phrase"),
		say.Many(g.end()-g.phrases[0].counts, "count"), say.Clock(g.duration))
	f.Fix = "start: phrase 1"
	return f
}

func startWords(s plan.Start) string {
	switch {
	case s.Time != nil:
		return say.Clock(*s.Time)
	case s.Phrase > 0:
		return fmt.Sprintf("phrase %d", s.Phrase)
	}
	return fmt.Sprintf("count %d", s.Count)
}
