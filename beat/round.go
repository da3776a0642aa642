package beat

import "math"

// What is written is rounded to what is known, so that results are the same
// on processors that add in another order.
const (
	timeStep  = 1e-4 // [s]
	tempoStep = 0.01 // [1/min]
	levelStep = 0.01 // [LU]
	oddsStep  = 1e-3
)

func rounded(x, step float64) float64 {
	per := math.Round(1 / step)
	return math.Round(x*per) / per
}

// round rounds every figure of the track.
func (t *Track) round() {
	t.Duration = rounded(t.Duration, timeStep)
	t.BPM = rounded(t.BPM, tempoStep)
	t.Loudness = rounded(t.Loudness, levelStep)
	for i := range t.Beats {
		t.Beats[i] = rounded(t.Beats[i], timeStep)
	}
	for i := range t.Alternatives {
		a := &t.Alternatives[i]
		a.BPM, a.Odds = rounded(a.BPM, tempoStep), rounded(a.Odds, oddsStep)
	}
	for i := range t.Phrases {
		p := &t.Phrases[i]
		p.Time, p.Trust = rounded(p.Time, timeStep), rounded(p.Trust, oddsStep)
	}
	for i := range t.TempoChanges {
		c := &t.TempoChanges[i]
		c.Time, c.BPM = rounded(c.Time, timeStep), rounded(c.BPM, tempoStep)
	}
	for i := range t.Songs {
		s := &t.Songs[i]
		s.Time, s.BPM = rounded(s.Time, timeStep), rounded(s.BPM, tempoStep)
	}
	for i := range t.Unsteady {
		for k := range t.Unsteady[i] {
			t.Unsteady[i][k] = rounded(t.Unsteady[i][k], timeStep)
		}
	}
	for _, p := range []*float64{&t.Trust.Beat, &t.Trust.Count1, &t.Trust.Phrase} {
		*p = rounded(*p, oddsStep)
	}
}
