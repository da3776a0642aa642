package main

import (
	"fmt"
	"io"
	"math"
	"runtime"
	"slices"
	"text/tabwriter"

	"onphrase/beat/score"
)

// report prints the tables.
func report(w io.Writer, all []result, cpu float64) {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "group\tn\tF\tCMLt\tAMLt\tcount 1\tphrase\tchorus\tpart\tturn\tAcc1\tAcc2\tCemgil\tgain\terror ms\tbias ms\t")
	for _, g := range []struct {
		title string
		key   func(result) string
	}{
		{"source", func(r result) string { return r.source }},
		{"maker", func(r result) string { return r.maker }},
		{"vocals", func(r result) string { return labelled("vocals ", r.vocals) }},
		{"style", func(r result) string { return r.style }},
		{"tempo", func(r result) string { return fmt.Sprintf("%3d-", int(r.bpm/20)*20) }},
		{"trust", func(r result) string { return trustBand(r.track.Trust.Beat) }},
		{"", func(result) string { return "all" }},
	} {
		groups := map[string][]result{}
		for _, r := range all {
			groups[g.key(r)] = append(groups[g.key(r)], r)
		}
		if len(groups[""]) == len(all) {
			continue // the manifest says nothing of it
		}
		var keys []string
		for k := range groups {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		for _, k := range keys {
			row(t, k, groups[k])
		}
		fmt.Fprintln(t, "\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t")
	}
	t.Flush()
	reportLevels(w, all)
	reportTempo(w, all)
	reportMisses(w, all)
	reportTrust(w, all)
	reportOnes(w, all)
	reportOdd(w, all)
	reportStarts(w, all)
	reportMarks(w, all)
	reportSteps(w, all)
	minutes := 0.0
	for _, r := range all {
		minutes += r.track.Duration / 60
	}
	fmt.Fprintf(w, "\ncost: %.2f CPU s per minute of audio, %.0f x real time, decoding included (%.0f min, %d cores)\n",
		cpu/minutes, 60*minutes/cpu, minutes, runtime.GOMAXPROCS(0))
}

func row(w io.Writer, name string, rs []result) {
	var errs []float64
	for _, r := range rs {
		errs = append(errs, r.errs...)
	}
	fmt.Fprintf(w, "%s\t%d\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%.1f\t%+.1f\t\n", name, len(rs),
		mean(rs, func(r result) float64 { return r.F }),
		mean(rs, func(r result) float64 { return r.CMLt }),
		mean(rs, func(r result) float64 { return r.AMLt }),
		mean(rs, func(r result) float64 { return r.one }),
		mean(rs, func(r result) float64 { return r.phrase }),
		marked(rs, chorus), marked(rs, part), inStep(rs),
		mean(rs, func(r result) float64 { return share(r.Acc1) }),
		mean(rs, func(r result) float64 { return share(r.Acc2) }),
		mean(rs, func(r result) float64 { return r.Cemgil }),
		mean(rs, func(r result) float64 { return r.Gain }),
		1000*median(absolute(errs)), 1000*median(errs))
}

// labelled is a word of the manifest after its label; "" where it says nothing.
func labelled(label, word string) string {
	if word == "" {
		return ""
	}
	return label + word
}

// trustBand names the stretch that a trust in the beats lies in.
func trustBand(trust float64) string {
	for i := len(markBands) - 2; i > 0; i-- {
		if trust >= markBands[i] {
			return fmt.Sprintf("trust %.1f-%.1f", markBands[i], markBands[i+1])
		}
	}
	return fmt.Sprintf("trust   <%.1f", markBands[1])
}

// mean prints the mean of a figure over the results that have it.
func mean(rs []result, f func(result) float64) string {
	sum, n := 0.0, 0
	for _, r := range rs {
		if v := f(r); !math.IsNaN(v) {
			sum += v
			n++
		}
	}
	if n == 0 {
		return "-"
	}
	return fmt.Sprintf("%.3f", sum/float64(n))
}

func share(ok bool) float64 {
	if ok {
		return 1
	}
	return 0
}

func absolute(x []float64) []float64 {
	y := slices.Clone(x)
	for i := range y {
		y[i] = math.Abs(y[i])
	}
	return y
}

func median(x []float64) float64 {
	if len(x) == 0 {
		return math.NaN()
	}
	y := slices.Clone(x)
	slices.Sort(y)
	return (y[(len(y)-1)/2] + y[len(y)/2]) / 2
}

// reportLevels prints the scores where either level is taken for right.
func reportLevels(w io.Writer, all []result) {
	n := 0
	for _, r := range all {
		if r.doubt == "octave" {
			n++
		}
	}
	fmt.Fprintf(w, "half or double passes on the %d tracks whose octave is in doubt: F %s CMLt %s AMLt %s Acc1 %s\n", n,
		mean(all, func(r result) float64 { return r.level.F }), mean(all, func(r result) float64 { return r.level.CMLt }),
		mean(all, func(r result) float64 { return r.level.AMLt }),
		mean(all, func(r result) float64 { return share(r.level.Acc1) }))
}

// reportTempo says how exact the tempo is where it is one throughout.
func reportTempo(w io.Writer, all []result) {
	var errs []float64
	within := 0
	for _, r := range all {
		if r.constant && r.Acc2 {
			errs = append(errs, r.bpmError)
			if r.bpmError <= 0.05 {
				within++
			}
		}
	}
	if len(errs) > 0 {
		fmt.Fprintf(w, "constant tempo: %d tracks, %d within 0.05 BPM of the truth or its half or double, worst %.3f\n",
			len(errs), within, slices.Max(errs))
	}
}

// reportMisses lists the tracks whose beats are not good.
func reportMisses(w io.Writer, all []result) {
	fmt.Fprintf(w, "\nmisses (F < %.1f):\n", goodF)
	for _, r := range all {
		if r.miss != "" {
			fmt.Fprintf(w, "  %-10s %-14s %-8s F %.2f  AMLt %.2f  %.2f BPM, truth %.2f  trust %.2f  rivals %v\n",
				r.id, r.style, r.miss, r.F, r.AMLt, r.track.BPM, r.bpm, r.track.Trust.Beat, r.track.Alternatives)
		}
	}
}

// reportTrust says how often beats of a given trust are good.
func reportTrust(w io.Writer, all []result) {
	fmt.Fprintln(w, "\ntrust in the beats: tracks, mean trust, share with F >= 0.9")
	var list []score.Claim
	for _, r := range all {
		list = append(list, score.Claim{Trust: r.track.Trust.Beat, Right: share(r.F >= goodF)})
	}
	score.WriteReliability(w, score.TrustBins, list)
}
