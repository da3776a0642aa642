// Package tap makes out what a person means who taps along with a track: how
// fast she counts, where her counts fall, and which corrections of what was
// heard say the same.
//
// People tap unevenly, a few hundredths of a second early on the whole, and now
// and then miss a count or strike one twice. So the taps choose among the
// readings of what was heard, whose counts lie on the attacks of the sound;
// only where none fits are they taken at their word.
//
// Ref: Repp 2005, "Sensorimotor synchronization: a review of the tapping
// literature" (taps come early; from memory).
package tap

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"onphrase/beat/internal/dsp"
)

// Least is how many taps it takes.
const Least = 8

// Pulse is what taps have in common: a count every Period, one of them at At.
type Pulse struct {
	Period float64 // [s]
	At     float64 // of a count in the middle of the taps [s]
	Spread float64 // the median distance of the taps from their counts [s]
}

// BPM is the tempo of a pulse [1/min].
func (p Pulse) BPM() float64 { return 60 / p.Period }

// uneven is the spread, as a share of the period, above which taps say
// nothing: taps at random have a quarter.
const uneven = 0.15

// Fit makes out the pulse of some taps [s], in order. The period is the median
// of the slopes between all pairs of taps, the place the median of what is
// left: a few wrong taps change neither.
//
// Ref: Theil 1950 and Sen 1968, the slope estimator of that name (from memory).
func Fit(taps []float64) (Pulse, error) {
	if len(taps) < Least {
		return Pulse{}, fmt.Errorf("%d taps or more are needed, these are %d", Least, len(taps))
	}
	if !slices.IsSorted(taps) {
		return Pulse{}, errors.New("the taps are not in order")
	}
	index := counted(taps)
	var slopes []float64
	for i := range taps {
		for j := range i {
			if n := index[i] - index[j]; n > 0 {
				slopes = append(slopes, (taps[i]-taps[j])/float64(n))
			}
		}
	}
	if len(slopes) == 0 {
		return Pulse{}, errors.New("all the taps are one")
	}
	p := Pulse{Period: dsp.Median(slopes)}
	middle := index[len(index)/2]
	var at []float64
	for i, t := range taps {
		at = append(at, t-float64(index[i]-middle)*p.Period)
	}
	p.At = dsp.Median(at)
	var off []float64
	for _, a := range at {
		off = append(off, math.Abs(a-p.At))
	}
	if p.Spread = dsp.Median(off); p.Spread > uneven*p.Period {
		return Pulse{}, errors.New("these taps are too uneven; tap once more, on every count")
	}
	return p, nil
}

// counted numbers the taps by the counts they fall on: one missed leaves a
// number out, one struck twice has the same number.
func counted(taps []float64) []int {
	var steps []float64
	for i := 1; i < len(taps); i++ {
		steps = append(steps, taps[i]-taps[i-1])
	}
	usual := dsp.Median(steps)
	index := make([]int, len(taps))
	for i, step := range steps {
		index[i+1] = index[i] + int(math.Round(step/usual))
	}
	return index
}
