package reading

import (
	"onphrase/beat/pulse"
	"onphrase/beat/tempo"
)

// levels are the periods of the other readings of a repetition, as multiples
// of its own: halves, thirds and dotted values.
var levels = []float64{1. / 4, 1. / 3, 1. / 2, 2. / 3, 3. / 4, 1, 4. / 3, 3. / 2, 2, 3, 4}

// Reading is one way of counting a stretch of music.
type Reading struct {
	Beats  []float64 // [s]
	Period float64   // typical, of a beat [s]
	Odds   float64   // probability 0-1 among the readings
	Clues  Clues     // by sound
	Heard  Clues     // by the ear; nil where it hears no music

	own bool // it is the ear's own
}

// Limits are the periods that count as beats [s].
type Limits struct{ Shortest, Longest float64 }

// Candidates follows the music at every level within limits and lists the
// beats on every phase that music knows: on the decoded beat, and a quarter,
// a third and a half away from it. Where the tempo is steady, the beats of one
// straight comb are listed too. start is the time of the activation's
// first frame [s].
func Candidates(activation []float64, start float64, curve tempo.Curve, limits Limits, model pulse.Model) []Reading {
	var all []Reading
	steady, isSteady := steadyPeriod(activation, start, model.FPS, curve)
	middle := curve.At(start + float64(len(activation))/model.FPS/2)
	for _, level := range levels {
		if p := middle * level; p < limits.Shortest || p > limits.Longest {
			continue
		}
		spans := make([]pulse.Span, len(activation))
		for i := range spans {
			spans[i] = model.Around(curve.At(start+float64(i)/model.FPS) * level * model.FPS)
		}
		chain := model.Decode(activation, nil, spans...)
		for _, phase := range places {
			all = append(all, Reading{Beats: shifted(chain.Frames, phase, start, model.FPS), Period: middle * level})
		}
		if !isSteady {
			continue
		}
		c := combAt(activation, steady*level)
		for _, phase := range places {
			all = append(all, Reading{Beats: c.beats(phase, len(activation), start, model.FPS), Period: middle * level})
		}
	}
	return all
}

// shifted moves beats by a share of their period and turns frames into
// seconds.
func shifted(frames []int, phase, start, fps float64) []float64 {
	var beats []float64
	for i := 0; i+1 < len(frames); i++ {
		at := float64(frames[i]) + phase*float64(frames[i+1]-frames[i])
		beats = append(beats, start+at/fps)
	}
	return beats
}
