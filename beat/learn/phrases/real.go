package main

import (
	"flag"
	"fmt"
	"math"
	"os"
	"sort"

	"onphrase/beat"
	"onphrase/beat/phrase"
	"onphrase/beat/score"
)

// real says how often what charts of records name starts on a phrase, and how
// far the trust in the phrase that it falls into is borne out.
func real(args []string) error {
	f := flag.NewFlagSet("real", flag.ExitOnError)
	list := f.Bool("list", false, "list what does not start on a phrase")
	turns := f.Bool("turns", false, "judge the phrase starts by whether another one sings from there on")
	f.Parse(args)
	for _, dir := range f.Args() {
		songs, err := examples([]string{dir})
		if err != nil {
			return err
		}
		var claims []score.Claim
		used := 0
		for _, e := range songs {
			var own []score.Claim
			if *turns {
				own = e.starts()
			} else {
				own = e.named(*list)
			}
			claims = append(claims, own...)
			if len(own) > 0 {
				used++
			}
		}
		right := 0.0
		for _, c := range claims {
			right += c.Right
		}
		fmt.Printf("%s: %d songs, %.0f of %d right, %.3f\n", dir, used, right, len(claims), right/float64(len(claims)))
		score.WriteReliability(os.Stdout, score.TrustBins, claims)
	}
	return nil
}

// onCount is how far a mark may lie from a count 1 [counts].
const onCount = 0.5

// named holds what a chart names against the phrases found.
func (e *example) named(list bool) []score.Claim {
	found, out := e.phrasesFound(), []score.Claim{}
	for _, m := range e.marks {
		if m.name == turn || len(found) == 0 {
			continue
		}
		in, near := found[0], found[0]
		for _, p := range found {
			if p.Time <= m.time+onCount*e.count() {
				in = p
			}
			if math.Abs(p.Time-m.time) < math.Abs(near.Time-m.time) {
				near = p
			}
		}
		c := score.Claim{Trust: in.Trust}
		if math.Abs(near.Time-m.time) <= onCount*e.count() {
			c.Right = 1
		} else if list {
			off := (m.time - near.Time) / e.count()
			fmt.Printf("  %-36s %-12s %7.2f s, %+.1f counts, trust %.2f\n", e.name, m.name, m.time, off, in.Trust)
		}
		out = append(out, c)
	}
	return out
}

// starts holds the phrases found against the turns.
func (e *example) starts() []score.Claim {
	var out []score.Claim
	for _, p := range e.phrasesFound() {
		if right, known := e.byTurns(p.Time); known {
			c := score.Claim{Trust: p.Trust}
			if right {
				c.Right = 1
			}
			out = append(out, c)
		}
	}
	return out
}

// byTurns judges a phrase start at some time [s] between the first turn and the
// last: on a turn it is right, whole phrases from the turns beside it it may be
// either, anywhere else it is wrong.
func (e *example) byTurns(t float64) (right, known bool) {
	var turns []float64
	for _, m := range e.marks {
		if m.name == turn {
			turns = append(turns, m.time)
		}
	}
	if n := len(turns); n < fewestTurns || t < turns[0]-onCount*e.count() || t > turns[n-1]+onCount*e.count() {
		return false, false
	}
	if e.onTurn(t) {
		return true, true
	}
	return false, !e.wholeFromTurns(turns, t)
}

// wholeFromTurns reports whether a time lies whole phrases after the turn before
// it, or before the one after.
func (e *example) wholeFromTurns(turns []float64, t float64) bool {
	const most = 0.03 // of a phrase
	k := sort.SearchFloat64s(turns, t)
	for _, u := range turns[max(0, k-1):min(len(turns), k+1)] {
		phrases := math.Abs(u-t) / (e.count() * float64(wholeBars*e.meter()))
		if math.Abs(phrases-math.Round(phrases)) < most {
			return true
		}
	}
	return false
}

// count is how long a count lasts, by the truth [s].
func (e *example) count() float64 {
	n := len(e.beats) - 1
	return (e.beats[n] - e.beats[0]) / float64(n)
}

// phrasesFound are those of the whole analysis.
func (e *example) phrasesFound() []beat.Phrase {
	if e.found.Sound == nil {
		return nil
	}
	var out []beat.Phrase
	for _, p := range phrase.Find(e.found.Sound, e.found.Bars) {
		trust := beat.PhraseTrust(p.Trust, e.found.Trust[1])
		out = append(out, beat.Phrase{Time: e.found.Beats[p.Beat], Counts: p.Counts, Trust: trust})
	}
	return out
}
