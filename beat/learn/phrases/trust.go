package main

import (
	"flag"
	"fmt"
	"math"

	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/score"
)

// trust fits how far phrase starts are to be trusted to songs that the network
// was not trained on: given true bars; or, with -whole, in the whole analysis,
// where bars may be wrong.
func trust(args []string) error {
	f := flag.NewFlagSet("trust", flag.ExitOnError)
	keep := f.Bool("write", false, "write the result into the source")
	whole := f.Bool("whole", false, "of the whole analysis")
	f.Parse(args)
	songs, err := examples(f.Args())
	if err != nil {
		return err
	}
	if *whole {
		return wholeTrust(songs, *keep)
	}
	w := logistic(startClaims(songs))
	fmt.Printf("%d songs: trust in a start given the bars %.2f\n", len(songs), w)
	if !*keep {
		return nil
	}
	return write(phraseTrust, "trustWeights", w...)
}

// wholeTrust fits how far trust in count 1 is trust in the bars that a start
// rests on: to rendered songs and to records with the same weight, since of the
// former there are more, and the latter are what she plays.
func wholeTrust(songs []*example, keep bool) error {
	var rendered, records []*example
	for _, e := range songs {
		if len(e.phrases) > 0 {
			rendered = append(rendered, e)
		} else {
			records = append(records, e)
		}
	}
	w := product(wholeClaims(rendered), wholeClaims(records))
	fmt.Printf("%d songs, %d records: trust in the bars of a start %.2f\n", len(rendered), len(records), w)
	if !keep {
		return nil
	}
	return write(wholeWeights, "barsWeights", w...)
}

// sure fits how far count 1 is to be trusted to songs that nothing was fitted
// to, on top of the trust in the source.
func sure(args []string) error {
	f := flag.NewFlagSet("sure", flag.ExitOnError)
	keep := f.Bool("write", false, "write the result into the source")
	f.Parse(args)
	songs, err := examples(f.Args())
	if err != nil {
		return err
	}
	one := sureness(oneClaims(songs))
	fmt.Printf("%d songs: count 1 times %.2f (1 when calibrated)\n", len(songs), one)
	was, err := present(barTrust, "sureness")
	if err != nil || !*keep {
		return err
	}
	return write(barTrust, "sureness", one*was)
}

// claim is a trust and whether it was right.
type claim struct {
	trust float64
	right bool
}

// goodF is the F of the counts 1 from which they are right.
const goodF = 0.9

// oneClaims are what beat/bar says of each song.
func oneClaims(songs []*example) []claim {
	var out []claim
	for _, e := range songs {
		b := bar.Find(e.sound)
		f := score.FMeasure(ones(e.beats, e.position), ones(e.beats, b.BeatInBar), 0.07)
		out = append(out, claim{b.Trust, f >= goodF})
	}
	return out
}

// signs are what the trust of a start is told from, and whether it was right.
type signs struct {
	values []float64
	right  bool
}

// startClaims are what beat/phrase says of each start it finds, given the true
// bars.
func startClaims(songs []*example) []signs {
	var out []signs
	for _, e := range songs {
		list := phrase.Find(e.sound, bar.Bars{Meter: e.meter(), BeatInBar: e.position})
		for i, right := range e.verdicts(e.beats, list) {
			out = append(out, signs{list[i].Signs[:], right})
		}
	}
	return out
}

// verdicts says of each phrase start of which something is known whether it is
// right.
func (e *example) verdicts(beats []float64, list []phrase.Phrase) map[int]bool {
	out := map[int]bool{}
	if len(e.phrases) > 0 {
		for i, verdict := range score.Starts(e.phrases, sections(beats, list), e.beats) {
			if verdict != score.Spare {
				out[i] = verdict == score.Right
			}
		}
		return out
	}
	for i, p := range list {
		if right, known := e.byTurns(beats[p.Beat]); known {
			out[i] = right
		}
	}
	return out
}

// wholeClaims are what the whole analysis says of each start.
func wholeClaims(songs []*example) []signs {
	var out []signs
	for _, e := range songs {
		if e.found.Sound == nil {
			continue
		}
		list := phrase.Find(e.found.Sound, e.found.Bars)
		for i, right := range e.verdicts(e.found.Beats, list) {
			out = append(out, signs{[]float64{list[i].Trust, phrase.LogOdds(e.found.Trust[1])}, right})
		}
	}
	return out
}

func ones(beats []float64, position []int) []float64 {
	var out []float64
	for i, p := range position {
		if p == 1 {
			out = append(out, beats[i])
		}
	}
	return out
}

// logistic finds the weights of the values that make what was so likeliest.
//
// Ref: Platt 1999, "Probabilistic outputs for support vector machines" (from
// memory).
func logistic(list []signs) []float64 {
	if len(list) == 0 {
		return nil
	}
	from := make([]float64, len(list[0].values))
	from[1] = 1
	return climb(from, func(w []float64) []float64 {
		g := make([]float64, len(w))
		for _, s := range list {
			miss := miss(s.right, dot(w, s.values))
			for i, v := range s.values {
				g[i] += miss * v / float64(len(list))
			}
		}
		return g
	})
}

// product finds the offset and slope of the log-odds, the second of the values,
// whose probability times the first makes what was so likeliest. Each of the
// lists has the same weight.
func product(lists ...[]signs) []float64 {
	return climb([]float64{0, 1}, func(w []float64) []float64 {
		g := make([]float64, 2)
		for _, list := range lists {
			for _, s := range list {
				start, odds := s.values[0], s.values[1]
				bars := 1 / (1 + math.Exp(-w[0]-w[1]*odds))
				slope := 1 - bars
				if !s.right {
					slope *= -start * bars / (1 - start*bars)
				}
				g[0] += slope / float64(len(list))
				g[1] += slope * odds / float64(len(list))
			}
		}
		return g
	})
}

// sureness finds the slope alone, of the log-odds against chance: one phase of
// four.
func sureness(list []claim) float64 {
	chance := phrase.LogOdds(0.25)
	return climb([]float64{1}, func(x []float64) []float64 {
		g := []float64{0}
		for _, c := range list {
			odds := phrase.LogOdds(c.trust) - chance
			g[0] += miss(c.right, chance+x[0]*odds) * odds / float64(len(list))
		}
		return g
	})[0]
}

// miss is how far the log-odds of being right fall short of what was so.
func miss(right bool, odds float64) float64 {
	guess := 1 / (1 + math.Exp(-odds))
	if right {
		return 1 - guess
	}
	return -guess
}
