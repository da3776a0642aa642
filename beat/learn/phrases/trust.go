package main

import (
	"errors"
	"flag"
	"fmt"
	"math"

	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/score"
)

// trust fits how far phrase starts are to be trusted to songs that the weights
// were not fitted to: given true bars; or, with -whole, in the whole analysis,
// where bars may be wrong. What it finds of the former goes on top of the trust
// in the source.
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
	start, first := calibrate(startClaims(songs, false)), calibrate(startClaims(songs, true))
	fmt.Printf("%d songs: phrases offset %.2f, slope %.2f; first phrases offset %.2f, slope %.2f (0 and 1 when calibrated)\n",
		len(songs), start[0], start[1], first[0], first[1])
	if !*keep {
		return nil
	}
	return errors.Join(onTop("trustOffset", "trustSlope", start), onTop("firstOffset", "firstSlope", first))
}

// onTop writes an offset and slope that are to follow those in the source.
func onTop(offset, slope string, by []float64) error {
	o, err := present(phraseTrust, offset)
	s, err2 := present(phraseTrust, slope)
	if err := errors.Join(err, err2); err != nil {
		return err
	}
	return errors.Join(write(phraseTrust, offset, by[0]+by[1]*o), write(phraseTrust, slope, by[1]*s))
}

// wholeTrust fits what trust in a start and in count 1 make together.
func wholeTrust(songs []*example, keep bool) error {
	w := logistic(wholeClaims(songs))
	fmt.Printf("%d songs: trust in a start by the whole analysis %.2f\n", len(songs), w)
	if !keep {
		return nil
	}
	return write(wholeWeights, "phraseWeights", w...)
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

// startClaims are what beat/phrase says of each start it finds, given the true
// bars: of the first ones, or of all others.
func startClaims(songs []*example, first bool) []claim {
	var out []claim
	for _, e := range songs {
		if len(e.phrases) == 0 {
			continue
		}
		list := phrase.Find(e.sound, bar.Bars{Meter: e.meter(), BeatInBar: e.position})
		for i, verdict := range score.Starts(e.phrases, sections(e.beats, list), e.beats) {
			if verdict != score.Spare && first == (i == 0) {
				out = append(out, claim{list[i].Trust, verdict == score.Right})
			}
		}
	}
	return out
}

// signs are what the trust of a start is told from, and whether it was right.
type signs struct {
	values []float64
	right  bool
}

// wholeClaims are what the whole analysis says of each start.
func wholeClaims(songs []*example) []signs {
	var out []signs
	for _, e := range songs {
		if len(e.phrases) == 0 || e.found.Sound == nil {
			continue
		}
		list := phrase.Find(e.found.Sound, e.found.Bars)
		for i, verdict := range score.Starts(e.phrases, sections(e.found.Beats, list), e.beats) {
			if verdict != score.Spare {
				values := []float64{1, phrase.LogOdds(list[i].Trust), phrase.LogOdds(e.found.Trust[1])}
				out = append(out, signs{values, verdict == score.Right})
			}
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

// calibrate finds the offset and slope by which the log-odds of trusts become
// those of being right.
//
// Ref: Platt 1999, "Probabilistic outputs for support vector machines" (from
// memory).
func calibrate(list []claim) []float64 {
	var all []signs
	for _, c := range list {
		all = append(all, signs{[]float64{1, phrase.LogOdds(c.trust)}, c.right})
	}
	return logistic(all)
}

// logistic finds the weights of the values that make what was so likeliest.
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
