package correct

import (
	"errors"

	"onphrase/beat"
)

// fewest counts without which there is no track to teach on.
const fewest = 8

// half keeps every second count. Which of the two, most phrase starts decide,
// and those that the person has set before all others.
func (d *draft) half() error {
	if len(d.beats) < 2*fewest {
		return errors.New("too few counts to take half of them")
	}
	side := d.side()
	var beats []float64
	for i := side; i < len(d.beats); i += 2 {
		beats = append(beats, d.beats[i])
	}
	d.at(beats, func(i int) int { return max(0, i-side+1) / 2 }, 0.5)
	d.join()
	return nil
}

// side is 0 where the even counts stay, 1 where the odd ones do.
func (d *draft) side() int {
	const person = 1 << 20 // outweighs all that was heard
	votes := [2]int{}
	for _, s := range d.starts {
		votes[s.beat%2]++
		if s.set {
			votes[s.beat%2] += person
		}
	}
	if len(d.starts) == 0 {
		for i, n := range d.inBar {
			if n == 1 {
				votes[i%2]++
			}
		}
	}
	if votes[1] > votes[0] {
		return 1
	}
	return 0
}

// double puts a count between every two, but where the counts break off.
func (d *draft) double() {
	place := make([]int, len(d.beats)+1)
	var beats []float64
	steps := d.steps()
	for i, at := range d.beats {
		place[i] = len(beats)
		beats = append(beats, at)
		if i < len(steps) && steps[i] > 0 {
			beats = append(beats, at+steps[i]/2)
		}
	}
	place[len(d.beats)] = len(beats)
	heard := make([]int, len(d.starts))
	for i, s := range d.starts {
		heard[i] = place[s.beat]
	}
	d.at(beats, func(i int) int { return place[i] }, 2)
	for _, b := range heard {
		d.cutAfter(b)
	}
}

// at puts the draft on other counts; place gives the new index of a count. The
// person has chosen among the readings of the tempo: the others are gone, and
// what was trusted given the counts is trusted as such.
func (d *draft) at(beats []float64, place func(int) int, tempo float64) {
	var moved []start
	for _, s := range d.starts {
		s.beat = place(s.beat)
		if d.trust.Beat > 0 {
			s.trust = min(1, s.trust/d.trust.Beat)
		}
		if s.beat < len(beats) && (len(moved) == 0 || moved[len(moved)-1].beat < s.beat) {
			moved = append(moved, s)
		}
	}
	one := 0
	for i, n := range d.inBar {
		if n == 1 {
			one = place(i)
			break
		}
	}
	if d.trust.Beat > 0 {
		d.trust.Count1 = min(1, d.trust.Count1/d.trust.Beat)
		d.trust.Phrase = min(1, d.trust.Phrase/d.trust.Beat)
	}
	d.trust.Beat, d.rivals = 1, nil
	d.starts, d.end, d.beats = moved, min(place(d.end), len(beats)), beats
	d.bpm *= tempo
	d.tempo *= tempo
	d.inBar = make([]int, len(beats))
	d.label(0, len(beats), one)
	for i, s := range d.starts {
		d.label(s.beat, d.next(i), s.beat)
	}
}

// join makes one phrase of two halves of one.
func (d *draft) join() {
	const part = beat.PhraseLen / 2
	var joined []start
	for i, s := range d.starts {
		n := len(joined)
		whole := n > 0 && !s.set && s.beat-joined[n-1].beat == part && d.next(i)-s.beat == part
		if !whole {
			joined = append(joined, s)
		}
	}
	d.starts = joined
}
