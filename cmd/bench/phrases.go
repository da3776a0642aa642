package main

import (
	"fmt"
	"io"
	"slices"
	"text/tabwriter"

	"onphrase/beat"
	"onphrase/beat/score"
)

// start is a phrase start that was found.
type start struct {
	trust   float64
	verdict score.Verdict
}

// measurePhrases holds the phrases against their truth, where there is one.
func (r *result) measurePhrases() {
	if len(r.phrases) == 0 {
		return
	}
	var found []score.Section
	for _, p := range r.track.Phrases {
		found = append(found, score.Section{Time: p.Time, Counts: p.Counts})
	}
	r.phrase = score.Phrases(r.phrases, found, r.beats).F
	r.odd = score.OddPhrases(r.phrases, found, r.beats)
	if len(found) > 0 {
		r.foundOdd = score.OddPhrases(found, r.phrases, r.track.Beats)
	}
	for i, v := range score.Starts(r.phrases, found, r.beats) {
		r.starts = append(r.starts, start{r.track.Phrases[i].Trust, v})
	}
}

// missed stands where no phrase was found to start.
const missed = "none"

// reportOdd confuses the odd phrases of the truth, tags and bridges, with what
// was found there, and lists those that are wrong.
func reportOdd(w io.Writer, all []result) {
	kinds := []string{string(beat.Whole), string(beat.Tag), string(beat.Bridge), string(beat.Short), string(beat.Long),
		missed}
	table := map[[2]string]int{}
	right, n := 0, 0
	var wrong []string
	for _, r := range all {
		for _, c := range r.odd {
			n++
			table[[2]string{kindOf(c.Counts), kindOf(c.Found)}]++
			if c.Right() {
				right++
				continue
			}
			wrong = append(wrong, fmt.Sprintf("  %-10s %6.1f s  %s of %d, found %s of %d", r.id, c.Time, kindOf(c.Counts),
				c.Counts, kindOf(c.Found), c.Found))
		}
	}
	foundRight, found := 0, 0
	for _, r := range all {
		found += len(r.foundOdd)
		for _, c := range r.foundOdd {
			foundRight += int(share(c.Right()))
		}
	}
	fmt.Fprintf(w, "\nodd phrases: %d of %d right with their length, %d of %d found are true; truth down, found across\n",
		right, n, foundRight, found)
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprint(t, "\t")
	for _, k := range kinds {
		fmt.Fprintf(t, "%s\t", k)
	}
	fmt.Fprintln(t)
	for _, truth := range kinds[:len(kinds)-1] {
		fmt.Fprintf(t, "%s\t", truth)
		for _, found := range kinds {
			fmt.Fprintf(t, "%d\t", table[[2]string{truth, found}])
		}
		fmt.Fprintln(t)
	}
	t.Flush()
	slices.Sort(wrong)
	for _, line := range wrong {
		fmt.Fprintln(w, line)
	}
}

func kindOf(counts int) string {
	if counts == 0 {
		return missed
	}
	return string(beat.KindOf(counts))
}

// reportStarts says how often phrase starts of a given trust are right.
func reportStarts(w io.Writer, all []result) {
	fmt.Fprintln(w, "\ntrust in phrase starts: starts, mean trust, share that is right within half a count")
	var list []score.Claim
	for _, r := range all {
		for _, s := range r.starts {
			if s.verdict != score.Spare {
				list = append(list, score.Claim{Trust: s.trust, Right: share(s.verdict == score.Right)})
			}
		}
	}
	score.WriteReliability(w, score.TrustBins, list)
}
