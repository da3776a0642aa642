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

// trust fits how far bars and phrases are to be trusted to songs that the
// weights were not fitted to. What it finds goes on top of the trust in the
// source.
func trust(args []string) error {
	f := flag.NewFlagSet("trust", flag.ExitOnError)
	keep := f.Bool("write", false, "write the result into the source")
	f.Parse(args)
	songs, err := examples(f.Args())
	if err != nil {
		return err
	}
	one, start := sureness(oneClaims(songs)), calibrate(startClaims(songs))
	fmt.Printf("%d songs: count 1 times %.2f; phrases offset %.2f, slope %.2f (1, and 0 and 1, when calibrated)\n", len(songs), one, start[0], start[1])
	if !*keep {
		return nil
	}
	was := map[string]float64{}
	for name, file := range map[string]string{"sureness": barTrust, "trustOffset": phraseTrust, "trustSlope": phraseTrust} {
		if was[name], err = present(file, name); err != nil {
			return err
		}
	}
	return errors.Join(
		write(barTrust, "sureness", one*was["sureness"]),
		write(phraseTrust, "trustOffset", start[0]+start[1]*was["trustOffset"]),
		write(phraseTrust, "trustSlope", start[1]*was["trustSlope"]),
	)
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
// bars.
func startClaims(songs []*example) []claim {
	var out []claim
	for _, e := range songs {
		if len(e.phrases) == 0 {
			continue
		}
		list := phrase.Find(e.sound, bar.Bars{Meter: e.meter(), BeatInBar: e.position})
		var found []score.Section
		for _, p := range list {
			found = append(found, score.Section{Time: e.beats[p.Beat], Counts: p.Counts})
		}
		for i, verdict := range score.Starts(e.phrases, found, e.beats) {
			if verdict != score.Spare {
				out = append(out, claim{list[i].Trust, verdict == score.Right})
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
	return climb([]float64{0, 1}, func(x []float64) []float64 {
		g := []float64{0, 0}
		for _, c := range list {
			odds := logOdds(c.trust)
			miss := c.miss(x[0] + x[1]*odds)
			g[0] += miss / float64(len(list))
			g[1] += miss * odds / float64(len(list))
		}
		return g
	})
}

// sureness finds the slope alone, of the log-odds against chance: one phase of
// four.
func sureness(list []claim) float64 {
	chance := logOdds(0.25)
	return climb([]float64{1}, func(x []float64) []float64 {
		g := []float64{0}
		for _, c := range list {
			odds := logOdds(c.trust) - chance
			g[0] += c.miss(chance+x[0]*odds) * odds / float64(len(list))
		}
		return g
	})[0]
}

// miss is how far the log-odds of being right fall short of what was so.
func (c claim) miss(odds float64) float64 {
	guess := 1 / (1 + math.Exp(-odds))
	if c.right {
		return 1 - guess
	}
	return -guess
}

// logOdds of a probability, kept away from certainty.
func logOdds(p float64) float64 {
	const most = 0.999
	p = min(most, max(1-most, p))
	return math.Log(p / (1 - p))
}
