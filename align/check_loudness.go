package align

import (
	"fmt"
	"math"

	"onphrase/plan/say"
)

// A difference of loudness between neighbours [LU] that people notice, and
// one at which somebody reaches for the volume. Common practice, no source;
// programme loudness is measured after ITU-R BS.1770.
const heardLouder, farLouder = 3, 6

var loudnessJump = Check{
	Code:  "loudness-jump",
	Title: "a track is much louder or softer than the one before it",
	Why: "The voice drowns, or the energy drops, until the volume is found again; ears do not get used to the " +
		"louder one, they are hurt by it.",
	Source: "3 and 6 LU: common practice, no source; loudness after ITU-R BS.1770; the file cannot tell the level " +
		"in the room",
	Severity: Watch,
	Left:     "takes other music, or a hand at the volume",
	find: func(l *placedClass) []Finding {
		var out []Finding
		var last *music
		for _, p := range l.parts {
			for i := range p.music {
				m := &p.music[i]
				if !m.used || m.grid.track.Loudness == 0 {
					continue
				}
				if last != nil && !calm(p.part.Kind) {
					if f, ok := p.louder(last, m); ok {
						out = append(out, f)
					}
				}
				last = m
			}
		}
		return out
	},
}

// louder compares a track with the one played before it.
func (p *placedPart) louder(before, m *music) (Finding, bool) {
	by := m.grid.track.Loudness - before.grid.track.Loudness
	if math.Abs(by) < heardLouder {
		return Finding{}, false
	}
	f := p.about(Note, m.ref.Pos.Line)
	if math.Abs(by) >= farLouder {
		f.Severity = Watch
	}
	f.Figures = map[string]float64{"loudness_lufs": m.grid.track.Loudness,
		"loudness_before_lufs": before.grid.track.Loudness, "difference_lu": by}
	word := "louder"
	if by < 0 {
		word = "softer"
	}
	f.Message = fmt.Sprintf("%s is %s LU %s than %s before it", m.ref.File, say.Num(math.Abs(by), 1), word,
		before.ref.File)
	f.Fix = fmt.Sprintf("set the volume by %s dB when it starts", say.Num(-by, 0))
	return f, true
}
