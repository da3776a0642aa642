package beat

import (
	"onphrase/beat/bar"
	"onphrase/beat/ear"
)

// Claim is what the analysis says of one stretch of a track, and what its
// trust is told from: what beat/learn/trust holds against the truth.
type Claim struct {
	From, To float64   // [s]
	Beats    []float64 // [s]
	Around   []float64 // how strong the ear is around each, 0-1: what Track.Unsteady goes by
	Signs    Signs
}

// Claims follows a piece of music stretch by stretch where the ear leads,
// however little it hears. sure is the mean activation on the ear's own
// counts, 0-1, by which Analyze decides whether it leads.
func Claims(src Source) (all []Claim, sure float64, err error) {
	h, err := listen(src)
	if err != nil {
		return nil, 0, err
	}
	hearing := ear.Listen(h.frames)
	h.frames.Pack()
	c := h.byEar(hearing, nil)
	for _, p := range h.parts(c) {
		if p.heard {
			all = append(all, Claim{p.From, p.To, p.Beats, smooth(c.strength(p.Beats)), p.signs})
		}
	}
	return all, certainty(c.chain.beats, hearing.Beat, hearing.FPS), nil
}

// Barred is Analyze up to the bars, and what the counts sound like, from which
// phrases are told: what beat/learn/phrases learns from. sound is nil where no
// beat was found.
func Barred(src Source) (t Track, sound *bar.Sound, bars bar.Bars, err error) {
	h, err := listen(src)
	if err != nil {
		return Track{}, nil, bar.Bars{}, err
	}
	hearing := ear.Listen(h.frames)
	h.frames.Pack()
	t, sound, bars = h.barred(h.cues(hearing, nil))
	return t, sound, bars, nil
}
