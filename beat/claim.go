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

// Hearing is a track up to its bars, and what its counts sound like.
type Hearing struct {
	Track
	Bars  bar.Bars
	Sound *bar.Sound // of the counts; nil where no beat was found
	Truth *bar.Sound // of counts given
}

// Hear is Analyze up to the bars, and what counts sound like, from which phrases
// are told: those found, and those of the truth [s]. It is what
// beat/learn/phrases learns from.
func Hear(src Source, truth []float64) (Hearing, error) {
	h, err := listen(src)
	if err != nil {
		return Hearing{}, err
	}
	hearing := ear.Listen(h.frames)
	h.frames.Pack()
	var out Hearing
	b, _ := h.barred(h.cues(hearing, nil))
	out.Track, out.Sound, out.Bars = b.track, b.sound, b.bars
	out.Truth = bar.Measure(truth, h.frames, h.onsets, h.tones)
	out.Truth.One = at(truth, hearing.One, hearing.FPS)
	return out, nil
}
