package main

import (
	"fmt"
	"io"

	"onphrase/beat/score"
)

// step is a phrase start, held against the places where voices take turns. They
// do so every half phrase or phrase, so that a phrase may start at a turn, or a
// multiple of longTurn counts from it, and nowhere else. A voice may come early
// or late: only turns count whose neighbour is in step with them.
type step struct {
	time  float64 // [s]
	trust float64
	off   int // counts beyond a multiple of longTurn since the last turn; 0 is right
}

// measureSteps holds the phrase starts between the first turn and the last
// against the turns.
func (r *result) measureSteps() {
	var turns []int // index in r.beats
	for _, m := range r.marks {
		if i, d := nearest(r.beats, m.time); m.kind == turn && d <= onChart {
			turns = append(turns, i)
		}
	}
	turns = confirmed(turns)
	if len(turns) < 2 {
		return
	}
	for _, p := range r.track.Phrases {
		at, d := nearest(r.beats, p.Time)
		if p.Time < r.beats[0]-markWindow {
			continue // the truth has no counts there
		}
		if at < turns[0]-longTurn || at > turns[len(turns)-1]+longTurn {
			continue
		}
		s := step{time: p.Time, trust: p.Trust}
		if d > markWindow {
			s.off = offBeat
			r.steps = append(r.steps, s)
			continue
		}
		last := turns[0]
		for _, t := range turns {
			if t <= at {
				last = t
			}
		}
		s.off = ((at-last)%longTurn + longTurn) % longTurn
		r.steps = append(r.steps, s)
	}
}

// confirmed are the turns that lie a multiple of longTurn counts from the one
// before or after them.
func confirmed(turns []int) []int {
	var out []int
	for i, t := range turns {
		before := i > 0 && (t-turns[i-1])%longTurn == 0
		after := i+1 < len(turns) && (turns[i+1]-t)%longTurn == 0
		if before || after {
			out = append(out, t)
		}
	}
	return out
}

// offBeat marks a phrase start that lies on no count of the song.
const offBeat = -1

// inStep is the share of the phrase starts in step with the turns.
func inStep(rs []result) string {
	hit, n := 0, 0
	for _, r := range rs {
		for _, s := range r.steps {
			n++
			hit += int(share(s.off == 0))
		}
	}
	return portion(hit, n)
}

// reportSteps says how often phrase starts of a trust are in step with the turns.
func reportSteps(w io.Writer, all []result) {
	var claims []score.Claim
	off := map[int]int{}
	for _, r := range all {
		for _, s := range r.steps {
			claims = append(claims, score.Claim{Trust: s.trust, Right: share(s.off == 0)})
			if s.off != 0 {
				off[s.off]++
			}
		}
	}
	if len(claims) == 0 {
		return
	}
	fmt.Fprintf(w, "\nphrase starts in step with voices that take turns, %d counts or a multiple from a turn, by trust: "+
		"starts, mean trust, share in step\n", longTurn)
	score.WriteReliability(w, markBands, claims)
	title := fmt.Sprintf("the others are so many counts off, of %d (times; %d is on no count):", longTurn, offBeat)
	writeOften(w, title, off)
	for _, r := range all {
		for _, s := range r.steps {
			if s.off != 0 {
				fmt.Fprintf(w, "  %-30s %6.1f s  %2d off, trust %.2f\n", r.id, s.time, s.off, s.trust)
			}
		}
	}
}
