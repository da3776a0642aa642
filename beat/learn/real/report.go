package main

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"text/tabwriter"

	"onphrase/beat/score"
)

// oneWindow is how far a count 1 may be from that of the truth [s].
const oneWindow = 0.07

func columns(w io.Writer, head string) *tabwriter.Writer {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(t, "\n%s\n", head)
	return t
}

// reportKnown scores us and the others against truth.
func reportKnown(w io.Writer, known []track) {
	t := columns(w, "known tempo\tstyle\tbpm\tours\tF\tCMLt\tAMLt\tAcc1\tcount 1\ttrust\tof count 1\tF aubio\tF essentia\tF beatroot")
	for _, k := range known {
		r := score.Beats(k.truth, k.ours.Beats)
		bpm := 60 / period(k.truth)
		fmt.Fprintf(t, "%s\t%s\t%.1f\t%.1f\t%.3f\t%.3f\t%.3f\t%v\t%.3f\t%.2f\t%.2f", k.id, k.style, bpm, k.ours.BPM, r.F,
			r.CMLt, r.AMLt,
			score.CompareTempo(bpm, k.ours.BPM).Acc1, score.FMeasure(k.ones, k.ours.countOnes(), oneWindow), k.ours.Trust.Beat,
			k.ours.Trust.Count1)
		for _, f := range followers {
			fmt.Fprintf(t, "\t%.3f", score.Beats(k.truth, k.others[f]).F)
		}
		fmt.Fprintln(t)
	}
	t.Flush()
}

// reportGroups counts how ours relate to the reference.
func reportGroups(w io.Writer, title string, all []judgement, key func(judgement) string) {
	groups := map[string][]judgement{}
	for _, j := range all {
		groups[key(j)] = append(groups[key(j)], j)
	}
	t := columns(w, title+"\ttracks\twith a reference\tsame\tour ways to differ")
	for _, k := range slices.Sorted(maps.Keys(groups)) {
		with := 0
		ways := map[string]int{}
		for _, j := range groups[k] {
			if j.relation != "" {
				with++
				ways[j.relation]++
			}
		}
		same := ways["same"]
		delete(ways, "same")
		fmt.Fprintf(t, "%s\t%d\t%d\t%d\t", k, len(groups[k]), with, same)
		for _, way := range slices.Sorted(maps.Keys(ways)) {
			fmt.Fprintf(t, "%d %s  ", ways[way], way)
		}
		fmt.Fprintln(t)
	}
	t.Flush()
}

// trustFrom are the lower ends of the classes of trust.
var trustFrom = []float64{0.95, 0.9, 0.8, 0.6, 0.3, 0}

// reportTrust shows how often counts of a trust are the same as the reference, or
// the same but for the octave.
func reportTrust(w io.Writer, all []judgement) {
	t := columns(w, "trust from\twith a reference\tsame\thalf or double\twithout one")
	upper := 2.0
	for _, from := range trustFrom {
		var with, same, octave, without int
		for _, j := range all {
			if trust := j.ours.Trust.Beat; len(j.ours.Beats) == 0 || trust < from || trust >= upper {
				continue
			}
			switch j.relation {
			case "":
				without++
				continue
			case "same":
				same++
			case "half", "double":
				octave++
			}
			with++
		}
		upper = from
		fmt.Fprintf(t, "%.2f\t%d\t%d\t%d\t%d\n", from, with, same, octave, without)
	}
	t.Flush()
}

// reportOthers counts how many tracks each two programs count alike.
func reportOthers(w io.Writer, music []track) {
	names := append([]string{"ours"}, followers...)
	counts := func(t track, name string) []float64 {
		if name == "ours" {
			return t.ours.Beats
		}
		return t.others[name]
	}
	t := columns(w, "tracks alike of "+fmt.Sprint(len(music)))
	for i, a := range names {
		for _, b := range names[i+1:] {
			n := 0
			for _, m := range music {
				if agree(counts(m, a), counts(m, b)) {
					n++
				}
			}
			fmt.Fprintf(t, "%s and %s\t%d\n", a, b, n)
		}
	}
	t.Flush()
}

// reportDisagreements lists the tracks where we differ from the reference, and
// those without one.
func reportDisagreements(w io.Writer, all []judgement) {
	t := columns(w, "we differ\tstyle\trelation\tagreed by\tbpm\tours\trivals\ttrust\taubio\tessentia\tbeatroot")
	for _, j := range all {
		if j.relation == "" || j.relation == "same" {
			continue
		}
		j.line(t)
	}
	t.Flush()
	t = columns(w, "nobody agrees\tstyle\tours is like\tagreed by\tbpm\tours\trivals\ttrust\taubio\tessentia\tbeatroot")
	for _, j := range all {
		if j.relation != "" {
			continue
		}
		for _, f := range followers {
			if agree(j.others[f], j.ours.Beats) {
				j.relation += f + " "
			}
		}
		j.line(t)
	}
	t.Flush()
}

func (j judgement) line(w io.Writer) {
	fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%.1f\t%.1f\t", j.id, j.style, j.relation, j.by, 60/period(j.reference), j.ours.BPM)
	for _, a := range j.ours.Alternatives {
		fmt.Fprintf(w, "%.0f ", a.BPM)
	}
	fmt.Fprintf(w, "\t%.2f", j.ours.Trust.Beat)
	for _, f := range followers {
		fmt.Fprintf(w, "\t%.1f", 60/period(j.others[f]))
	}
	fmt.Fprintln(w)
}

// reportNone lists the sounds without a beat in which we hear one.
func reportNone(w io.Writer, none []track) {
	t := columns(w, "no beat\tstyle\tour bpm\ttrust")
	refused := 0
	for _, n := range none {
		if len(n.ours.Beats) == 0 {
			refused++
			continue
		}
		fmt.Fprintf(t, "%s\t%s\t%.1f\t%.2f\n", n.id, n.style, n.ours.BPM, n.ours.Trust.Beat)
	}
	fmt.Fprintf(t, "refused\t%d of %d\n", refused, len(none))
	t.Flush()
}
