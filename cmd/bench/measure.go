package main

import (
	"fmt"
	"math"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/beat/score"
)

// result is one song analysed and scored.
type result struct {
	song
	score.Result
	score.Tempo
	track    beat.Track
	one      float64   // F of the ones, 70 ms; NaN where the truth is in doubt
	phrase   float64   // F of the phrase starts, 0.5 s; NaN where there is no truth
	errs     []float64 // of the matched beats [s]
	bpmError float64   // of the nearest octave [1/min]
	miss     string    // kind of error; "" where F is good enough
}

const (
	goodF        = 0.9
	phraseWindow = 0.5 // [s]
	oneWindow    = 0.07
)

func measure(s song, mode decode.Mode) (result, error) {
	r := result{song: s, one: math.NaN(), phrase: math.NaN()}
	stream, err := decode.Open(s.file, mode)
	if err != nil {
		return r, err
	}
	defer stream.Close()
	if r.track, err = beat.Analyze(stream); err != nil {
		return r, fmt.Errorf("%s: %w", s.file, err)
	}
	r.Result = score.Beats(s.beats, r.track.Beats)
	r.Tempo = score.CompareTempo(s.bpm, r.track.BPM)
	r.errs = score.Errors(s.beats, r.track.Beats)
	r.bpmError = octaveError(s.bpm, r.track.BPM)
	if s.doubt != "downbeat" && s.doubt != "octave" {
		r.one = score.FMeasure(ones(s.beats, s.position), ones(r.track.Beats, r.track.BeatInBar), oneWindow)
	}
	if len(s.phrases) > 0 {
		var found []float64
		for _, p := range r.track.Phrases {
			found = append(found, p.Time)
		}
		r.phrase = score.FMeasure(s.phrases, found, phraseWindow)
	}
	r.miss = r.classify()
	return r, nil
}

// ones are the beats that begin a bar.
func ones(beats []float64, position []int) []float64 {
	var out []float64
	for i, p := range position {
		if p == 1 {
			out = append(out, beats[i])
		}
	}
	return out
}

// octaveError is the distance of a tempo from the reference, half or double.
func octaveError(reference, bpm float64) float64 {
	best := math.Inf(1)
	for _, factor := range []float64{0.5, 1, 2} {
		best = min(best, math.Abs(bpm/factor-reference))
	}
	return best
}

// classify names what went wrong with the beats.
func (r result) classify() string {
	switch {
	case r.track.Problem != "":
		return "refused"
	case r.F >= goodF:
		return ""
	case !r.Acc2:
		return "tempo"
	case !r.Acc1:
		return "octave"
	case r.AMLt > r.CMLt+0.3:
		return "off-beat"
	}
	return "phase"
}
