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
	level    level // at the best level that the truth allows
	track    beat.Track
	one      float64         // F of the ones, 70 ms; NaN where the truth is in doubt
	phrase   float64         // F of the phrase starts, half a count; NaN where there is no truth
	starts   []start         // the phrase starts found, where there is truth
	odd      []score.OddCase // odd phrases of the truth, and what was found there
	foundOdd []score.OddCase // odd phrases found, and what the truth has there
	found    []found         // what was found at the marks of its chart
	steps    []step          // its phrase starts against voices that take turns
	errs     []float64       // of the matched beats [s]
	bpmError float64         // of the nearest octave [1/min]
	miss     string          // kind of error; "" where F is good enough
}

const (
	goodF     = 0.9
	oneWindow = 0.07 // [s]
)

func measure(s song, mode decode.Mode, without []beat.Stage) (result, error) {
	r := result{song: s, one: math.NaN(), phrase: math.NaN()}
	stream, err := decode.Open(s.file, mode)
	if err != nil {
		return r, err
	}
	defer stream.Close()
	if r.track, err = beat.AnalyzeWithout(stream, without...); err != nil {
		return r, fmt.Errorf("%s: %w", s.file, err)
	}
	r.Result = score.Beats(s.beats, r.track.Beats)
	r.Tempo = score.CompareTempo(s.bpm, r.track.BPM)
	r.level = r.bestLevel()
	r.errs = score.Errors(s.beats, r.track.Beats)
	r.bpmError = octaveError(s.bpm, r.track.BPM)
	r.one = count1(s, r.track)
	r.measurePhrases()
	r.measureMarks()
	r.measureSteps()
	r.miss = r.classify()
	return r, nil
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
