package main

import (
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/say"
)

// The least widths of the two columns of text in the library table [columns].
const (
	leastName  = 12
	leastParts = 9
)

// correctedMark follows the name of a track that a person has corrected, and
// stands before correctedByYou below the table.
const (
	correctedMark  = " *"
	correctedByYou = "corrected by you"
)

// libraryTable has a line for every track; c has the usual tempo of each kind
// of part.
func libraryTable(tracks []beat.Track, c *plan.Catalog) *table {
	t := &table{cols: []column{
		{head: "file", least: leastName},
		{head: "BPM", right: true},
		{head: "or", right: true},
		{head: "trust", right: true},
		{head: "count 1", right: true},
		{head: "phrases", right: true},
		{head: "odd", right: true},
		{head: "length", right: true},
		{head: "suits", least: leastParts},
	}}
	names := shortNames(tracks)
	for i, track := range tracks {
		if track.Problem != "" {
			t.add(names[i], track.Problem)
			continue
		}
		if track.Corrected {
			names[i] += correctedMark
			t.foot = strings.TrimSpace(correctedMark) + " " + correctedByYou
		}
		t.add(names[i], tempo(track), rival(track), trust(track), firstCount1(track),
			fmt.Sprint(len(track.Phrases)), odd(track), say.Clock(track.Duration), suits(track, c))
	}
	return t
}

// shortNames leaves the folders out where the file names alone are clear.
func shortNames(tracks []beat.Track) []string {
	seen := map[string]string{}
	clear := true
	names := make([]string, len(tracks))
	for i, t := range tracks {
		names[i] = filepath.Base(t.File)
		if other, ok := seen[names[i]]; ok && other != t.File {
			clear = false
		}
		seen[names[i]] = t.File
	}
	if clear {
		return names
	}
	for i, t := range tracks {
		names[i] = t.File
	}
	return names
}

// tempo is the BPM, or from the slowest to the fastest where it changes.
func tempo(t beat.Track) string {
	low, high := t.BPM, t.BPM
	for _, change := range t.TempoChanges {
		low, high = min(low, change.BPM), max(high, change.BPM)
	}
	if math.Round(high) > math.Round(low) {
		return fmt.Sprintf("%.0f-%.0f", low, high)
	}
	return fmt.Sprintf("%.1f", t.BPM)
}

// rival is the likeliest other reading of the tempo; of one that no class is
// taught at, the half or the double.
func rival(t beat.Track) string {
	if other := t.OtherOctave(); other > 0 {
		return fmt.Sprintf("%.0f", other)
	}
	best := beat.Rival{}
	for _, r := range t.Alternatives {
		if r.Odds > best.Odds {
			best = r
		}
	}
	if best.BPM == 0 {
		return "–"
	}
	return fmt.Sprintf("%.0f", best.BPM)
}

// trust is the lowest of the three.
func trust(t beat.Track) string {
	return percent(lowest(t))
}

// percent writes a trust of 0-1. It never says 100: nothing heard by a program
// is certain.
func percent(share float64) string { return fmt.Sprint(min(99, int(math.Round(100*share)))) }

// firstCount1 is where the first phrase starts.
func firstCount1(t beat.Track) string {
	if len(t.Phrases) == 0 {
		return "–"
	}
	return say.Moment(t.Phrases[0].Time)
}

// odd is the number of phrases that are not 32 counts long.
func odd(t beat.Track) string {
	n := 0
	for _, p := range t.Phrases {
		if p.Odd() {
			n++
		}
	}
	if n == 0 {
		return "–"
	}
	return fmt.Sprint(n)
}

// suits names the parts of a class whose usual tempo the track has.
func suits(t beat.Track, c *plan.Catalog) string {
	var parts []string
	for _, kind := range align.Suits(t.BPM, c) {
		parts = append(parts, string(kind))
	}
	if len(parts) == 0 {
		return "–"
	}
	return strings.Join(parts, ", ")
}

// writePhrases lists where every phrase starts, track by track.
func writePhrases(w io.Writer, tracks []beat.Track) error {
	for i, track := range tracks {
		if i > 0 {
			fmt.Fprintln(w)
		}
		if track.Problem != "" {
			if _, err := fmt.Fprintf(w, "%s: %s\n", track.File, track.Problem); err != nil {
				return err
			}
			continue
		}
		yours := ""
		if track.Corrected {
			yours = ", " + correctedByYou
		}
		fmt.Fprintf(w, "%s: %.1f BPM, %s, trust: counts %s, count 1 %s, phrases %s%s\n", track.File, track.BPM,
			say.Clock(track.Duration), percent(track.Trust.Beat), percent(track.Trust.Count1), percent(track.Trust.Phrase),
			yours)
		if err := phraseTable(track).write(w, defaultWidth); err != nil {
			return err
		}
	}
	return nil
}

// useIsASuggestion stands below a list of phrases.
const useIsASuggestion = "use: suggested by energy, place and length; common practice, no source"

func phraseTable(track beat.Track) *table {
	t := &table{cols: []column{
		{head: "phrase", right: true},
		{head: "starts", right: true},
		{head: "counts", right: true},
		{head: "kind"},
		{head: "energy"},
		{head: "trust", right: true},
		{head: "use"},
	}, foot: useIsASuggestion}
	for i, p := range track.Phrases {
		t.add(fmt.Sprint(i+1), say.Moment(p.Time), fmt.Sprint(p.Counts), string(p.Kind), string(p.Energy),
			percent(p.Trust), string(p.Use))
	}
	return t
}
