package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"text/tabwriter"

	"onphrase/beat"
	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/score"
)

// outcome is what became of one song.
type outcome struct {
	truth, whole float64 // F of the phrase starts: at true bars, by the whole analysis
	counts, ones float64 // F of counts and count 1 by the whole analysis
	odd, oddAll  int     // odd phrases right with their length at true bars, and how many there are
	claims       [2][]score.Claim
}

// report says folder by folder how well phrases are found, and how far their
// trust is borne out.
func report(args []string) error {
	f := flag.NewFlagSet("report", flag.ExitOnError)
	list := f.Bool("list", false, "list the songs that are not wholly right")
	f.Parse(args)
	t := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "folder\tsongs\tphrases, true bars\todd right\tall right\t"+
		"phrases, whole analysis\tcounts\tcount 1\tcalibration error\t")
	var claims []score.Claim
	for _, dir := range f.Args() {
		songs, err := examples([]string{dir})
		if err != nil {
			return err
		}
		var all []outcome
		for _, e := range songs {
			if len(e.phrases) == 0 {
				continue
			}
			o := e.judge()
			all = append(all, o)
			if *list && (o.truth < 1 || o.whole < 1) {
				fmt.Printf("%-40s %.2f %.2f  counts %.2f count 1 %.2f\n", e.name, o.truth, o.whole, o.counts, o.ones)
				e.print()
			}
		}
		claims = append(claims, row(t, filepath.Base(dir), all)...)
	}
	t.Flush()
	fmt.Println("trust in phrase starts by the whole analysis: starts, mean trust, share that is right")
	score.WriteReliability(os.Stdout, score.TrustBins, claims)
	return nil
}

// row prints one folder, and gives its claims by the whole analysis.
func row(t *tabwriter.Writer, name string, all []outcome) (claims []score.Claim) {
	n := float64(len(all))
	var sum outcome
	right := 0
	for _, o := range all {
		sum.truth += o.truth / n
		sum.whole += o.whole / n
		sum.counts += o.counts / n
		sum.ones += o.ones / n
		sum.odd += o.odd
		sum.oddAll += o.oddAll
		claims = append(claims, o.claims[1]...)
		if o.truth == 1 {
			right++
		}
	}
	_, off := score.Reliability(score.TrustBins, claims)
	fmt.Fprintf(t, "%s\t%d\t%.3f\t%d of %d\t%d\t%.3f\t%.3f\t%.3f\t%.3f\t\n",
		name, len(all), sum.truth, sum.odd, sum.oddAll, right, sum.whole, sum.counts, sum.ones, off)
	return claims
}

// judge finds the phrases of a song in both ways.
func (e *example) judge() outcome {
	var o outcome
	list := phrase.Find(e.sound, bar.Bars{Meter: e.meter(), BeatInBar: e.position})
	found := sections(e.beats, list)
	o.truth = score.Phrases(e.phrases, found, e.beats).F
	for _, c := range score.OddPhrases(e.phrases, found, e.beats) {
		o.oddAll++
		if c.Right() {
			o.odd++
		}
	}
	for i, v := range score.Starts(e.phrases, found, e.beats) {
		o.claims[0] = appendClaim(o.claims[0], list[i].Trust, v)
	}
	if e.found.Sound == nil {
		return o
	}
	o.counts = score.Beats(e.beats, e.found.Beats).F
	o.ones = score.Count1(ones(e.beats, e.position), ones(e.found.Beats, e.found.Bars.BeatInBar))
	list = phrase.Find(e.found.Sound, e.found.Bars)
	found = sections(e.found.Beats, list)
	o.whole = score.Phrases(e.phrases, found, e.beats).F
	for i, v := range score.Starts(e.phrases, found, e.beats) {
		o.claims[1] = appendClaim(o.claims[1], beat.PhraseTrust(list[i].Trust, e.found.Trust[1]), v)
	}
	return o
}

func appendClaim(list []score.Claim, trust float64, v score.Verdict) []score.Claim {
	switch v {
	case score.Right:
		return append(list, score.Claim{Trust: trust, Right: 1})
	case score.Wrong:
		return append(list, score.Claim{Trust: trust})
	}
	return list
}

func sections(beats []float64, list []phrase.Phrase) []score.Section {
	var out []score.Section
	for _, p := range list {
		out = append(out, score.Section{Time: beats[p.Beat], Counts: p.Counts})
	}
	return slices.Clip(out)
}

// print lists the lengths of the phrases, true and found at true bars, the latter with their trust.
func (e *example) print() {
	fmt.Print("   true ")
	for _, p := range e.phrases {
		fmt.Printf(" %d", p.Counts)
	}
	fmt.Print("\n   found")
	for i, p := range phrase.Find(e.sound, bar.Bars{Meter: e.meter(), BeatInBar: e.position}) {
		if i == 0 && p.Beat > 0 {
			fmt.Printf(" (%d)", p.Beat)
		}
		fmt.Printf(" %d:%.2f", p.Counts, p.Trust)
	}
	fmt.Println()
}
