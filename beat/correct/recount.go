package correct

import (
	"errors"
	"fmt"
	"math"

	"onphrase/beat"
)

// gap is the step between two counts, against the shorter one beside it, from
// which on counts are missing there.
const gap = 1.5

// steps are the lengths of one heard count after another [s], 0 where counts
// are missing.
func (d *draft) steps() []float64 {
	n := len(d.beats) - 1
	out := make([]float64, max(0, n))
	for i := range out {
		step := d.beats[i+1] - d.beats[i]
		beside := step
		if i > 0 {
			beside = min(beside, d.beats[i]-d.beats[i-1])
		}
		if i+2 < len(d.beats) {
			beside = min(beside, d.beats[i+2]-d.beats[i+1])
		}
		if step < gap*beside {
			out[i] = step
		}
	}
	return out
}

// every puts the counts at a ratio to those heard, one of them at a time. The
// heard counts go on to say how the tempo moves: what is set is only which of
// their parts is counted.
func (d *draft) every(r Ratio, at float64) error {
	heard, err := d.position(at)
	if err != nil {
		return err
	}
	// In whole numbers of 1/(2 Den) of a heard count: Den for the ratio, 2 for
	// what lies half-way.
	fine := 2 * r.Den
	step := 2 * r.Num
	here := int(math.Round(heard * float64(fine)))
	steps := d.steps()
	var beats []float64
	var fines []int
	last := (len(d.beats) - 1) * fine
	for p := ((here % step) + step) % step; p <= last; p += step {
		i, part := p/fine, p%fine
		switch {
		case part == 0:
			beats = append(beats, d.beats[i])
		case steps[i] == 0:
			continue // nothing was heard there
		default:
			beats = append(beats, d.beats[i]+steps[i]*float64(part)/float64(fine))
		}
		fines = append(fines, p)
	}
	if len(beats) < fewest {
		return errors.New("too few counts are left")
	}
	place := func(i int) int { // the new count nearest to a heard one, the later of two
		n := 0
		for n < len(fines) && fines[n] <= i*fine-step/2 {
			n++
		}
		return n
	}
	d.at(beats, place, float64(r.Den)/float64(r.Num))
	if r.Num != r.Den { // the phrases were counted in other counts
		d.afresh(d.nearest(at))
	}
	return nil
}

// position is a time in heard counts, from 0 on.
func (d *draft) position(at float64) (float64, error) {
	for i := 0; i+1 < len(d.beats); i++ {
		if at < d.beats[i+1] || i+2 == len(d.beats) {
			p := float64(i) + (at-d.beats[i])/(d.beats[i+1]-d.beats[i])
			if p < -1 || p > float64(len(d.beats)) {
				break
			}
			return p, nil
		}
	}
	return 0, fmt.Errorf("no counts were heard round %s", Clock(at))
}

// steady puts the counts at one tempo, from the beginning to the end, one of
// them at a time.
func (d *draft) steady(bpm, at float64) error {
	period := 60 / bpm
	var beats []float64
	for t := math.Mod(at, period); t < d.long; t += period {
		beats = append(beats, t)
	}
	if len(beats) < fewest {
		return errors.New("the track is too short for it")
	}
	heard := d.beats
	place := func(i int) int {
		if i >= len(heard) {
			return len(beats)
		}
		return max(0, int(math.Round((heard[i]-beats[0])/period)))
	}
	d.at(beats, place, bpm/d.bpm)
	d.bpm = bpm
	d.afresh(d.nearest(at))
	return nil
}

// afresh lists whole phrases only, one of them from a count on: what was heard
// of phrases in other counts says nothing about these.
func (d *draft) afresh(b int) {
	first := b % beat.PhraseLen
	d.trust.Phrase = min(d.trust.Phrase, guessed)
	d.starts, d.end = []start{{beat: first, trust: d.trust.Phrase}}, len(d.beats)
	d.label(0, len(d.beats), b)
	d.cutAfter(first)
}

// guessed is the trust in phrases that nobody has heard.
const guessed = 0.5

// checked takes everything for certain.
func (d *draft) checked() {
	d.trust = beat.Trust{Beat: 1, Count1: 1, Phrase: 1}
	d.rivals = nil
	for i := range d.starts {
		d.starts[i].trust = 1
	}
}
