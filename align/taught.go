package align

import (
	"sort"

	"onphrase/beat"
)

// Taught is a track count by count, as a part teaches it: what a page that
// follows the music needs. Programs find the same in the analysis of the
// track, so it is no part of the JSON form of the map.
type Taught struct {
	Meter    int            // counts in a bar: 4, 3, or 2 (6/8)
	Counts   []float64      // time of every count on the track's own timeline [s], strictly increasing
	Phrases  []TaughtPhrase // in order and without gaps, from the first one heard
	Unsteady [][2]float64   // stretches without a trustworthy beat, from-to [s]
	Outline  beat.Outline   // how loud it is as it goes on
}

// TaughtPhrase is a run of counts that belong together.
type TaughtPhrase struct {
	First  int // index of its count 1 in Counts
	Counts int
	Kind   beat.PhraseKind
	Trust  float64 // 0-1 that a phrase starts here
	Energy beat.Energy
	Use    beat.Use // suggested; empty where nothing was heard
}

// taught writes the grid out for those who show it.
func (g *grid) taught() *Taught {
	t := &Taught{Meter: g.track.Meter, Counts: []float64{}, Unsteady: g.track.Unsteady, Outline: g.track.Outline}
	for _, at := range g.times {
		t.Counts = append(t.Counts, ms(at))
	}
	for _, p := range g.phrases[1:] {
		heard := g.heardAt(p.first)
		t.Phrases = append(t.Phrases, TaughtPhrase{
			First: p.first, Counts: p.counts, Kind: beat.KindOf(p.counts), Trust: p.trust, Energy: heard.Energy,
			Use: heard.Use,
		})
	}
	return t
}

// Sound is how loud the music is on a count: 0 to 1 for the loudest, 0 where
// nothing is known.
func (t *Taught) Sound(count int) float64 {
	if count < 0 || count >= len(t.Counts) {
		return 0
	}
	from, to := t.Counts[count], t.Counts[count]+beat.OutlineStep
	if count+1 < len(t.Counts) {
		to = t.Counts[count+1]
	}
	return t.Outline.Between(from, to)
}

// heardAt is the phrase heard at a count; nothing before the first.
func (g *grid) heardAt(i int) beat.Phrase {
	heard := g.track.Phrases
	n := sort.Search(len(heard), func(n int) bool { return heard[n].Time > g.time(i)+beatError })
	if n == 0 {
		return beat.Phrase{}
	}
	return heard[n-1]
}
