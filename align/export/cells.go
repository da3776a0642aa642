package export

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// repsOf is what a row amounts to, in digits: 16 x 2-2 for a set, seconds
// for timed work.
func repsOf(r align.Row) string {
	switch {
	case r.Reps > 0:
		return fmt.Sprintf("%d x %s", r.Reps, r.Rhythm)
	case (r.Kind == align.IntervalRow || r.Kind == align.PauseRow) && r.Seconds > 0:
		return say.Num(r.Seconds, 1) + " s"
	}
	return ""
}

// countsOf is the row's length in counts, empty when there is none.
func countsOf(r align.Row) string { return figure(r.Counts) }

// figure writes a number, or nothing for 0.
func figure(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// itemOf names the row, with its round where it has one.
func itemOf(r align.Row) string {
	return strings.Join(append([]string{nameOf(r)}, roundsOf(r)...), ", ")
}

// nameOf names the row, with its stage, pass and turn where it has several.
func nameOf(r align.Row) string {
	name := []string{r.Item}
	several := r.Passes > max(1, r.Stages)
	switch {
	case r.Stage > 0 && several:
		name = append(name, fmt.Sprintf("stage %d", r.Stage), fmt.Sprintf("pass %d", r.Pass))
	case r.Stage > 0:
		name = append(name, fmt.Sprintf("stage %d of %d", r.Stage, r.Stages))
	case several:
		name = append(name, fmt.Sprintf("pass %d of %d", r.Pass, r.Passes))
	}
	return strings.Join(append(name, turnOf(r)...), ", ")
}

// joined joins what is not empty.
func joined(sep string, words ...string) string {
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), sep)
}

// detailsOf lists what else the instructor needs to know about a row.
func detailsOf(r align.Row) []string {
	var out []string
	if len(r.Moves) > 0 {
		out = append(out, align.Sequence(r.Moves))
	}
	if load := joined(", ", r.Weight, r.RangeWords()); load != "" {
		out = append(out, load)
	}
	if r.ByClock {
		out = append(out, "by the clock, whatever the music does")
	}
	if r.Cue != "" {
		out = append(out, "say: "+r.Cue)
	}
	if r.Easier != "" {
		out = append(out, "easier: "+r.Easier)
	}
	if r.Harder != "" {
		out = append(out, "harder: "+r.Harder)
	}
	return out
}

// cueOf is when to announce the row, empty when there is nothing to say.
func cueOf(r align.Row) string {
	if r.CueCounts == 0 {
		return ""
	}
	return say.Clock(r.CueTime)
}

// timeOf is the row's class time; a row without music has none of its own.
func timeOf(r align.Row) string {
	if !r.Placed {
		return "?"
	}
	return say.Clock(r.ClassTime)
}

// span is when a part begins and ends.
func span(part align.Part) string {
	if part.Seconds == 0 {
		return "no time known"
	}
	return say.Clock(part.ClassTime) + " to " + say.Clock(part.ClassTime+part.Seconds)
}

// musicLine describes a track as a part uses it.
func musicLine(t align.Music) string {
	name := t.File
	if t.Title != "" {
		name = fmt.Sprintf("%s (%s)", t.Title, t.File)
	}
	if t.Problem != "" {
		return fmt.Sprintf("%s: %s", name, t.Problem)
	}
	s := fmt.Sprintf("%s, %s BPM", name, playedAt(t))
	if t.Speed != 1 {
		s += fmt.Sprintf(" (recorded %s)", say.Num(t.BPM, 1))
	}
	if t.Corrected {
		s += ", corrected by you"
	}
	if !t.Used {
		return s + ", not needed"
	}
	return s + fmt.Sprintf(", starts %s on phrase %d", say.Moment(t.Start), t.Phrase)
}

// playedAt is the tempo of what is done on a track, or its slowest and its
// fastest where people would notice the difference.
func playedAt(t align.Music) string {
	if t.Fastest > (1+noticedTempo)*t.Slowest {
		return say.Num(t.Slowest, 1) + " to " + say.Num(t.Fastest, 1)
	}
	return say.Num(t.Played, 1)
}

// noticedTempo is the least step of tempo that people notice.
//
// Ref: Drake & Botte 1993.
const noticedTempo = 0.015

// summary says in a line how the findings stand.
func summary(fs []align.Finding) string {
	n := map[align.Severity]int{}
	for _, f := range fs {
		n[f.Severity]++
	}
	if len(fs) == 0 {
		return "Nothing to report."
	}
	return fmt.Sprintf("Findings: %d to fix, %d to watch, %s.", n[align.Fix], n[align.Watch],
		say.Many(n[align.Note], "note"))
}
