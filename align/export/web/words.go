package web

import (
	"fmt"

	"onphrase/align"
	"onphrase/plan/say"
)

// doseOf is how much of a row there is: repetitions, or seconds.
func doseOf(r align.Row) string {
	switch {
	case r.Reps > 0:
		return fmt.Sprintf("%d x %s", r.Reps, r.Rhythm.Words())
	case timed(r):
		return seconds(r.Seconds)
	}
	return ""
}

// shortDose is the same with the rhythm in figures alone.
func shortDose(r align.Row) string {
	if r.Reps > 0 {
		return fmt.Sprintf("%d x %s", r.Reps, r.Rhythm)
	}
	return doseOf(r)
}

func timed(r align.Row) bool {
	return (r.Kind == align.IntervalRow || r.Kind == align.PauseRow) && r.Seconds > 0
}

// seconds writes a time with a tenth where there is one.
func seconds(s float64) string {
	return say.Num(s, 1) + " s"
}

// brief is what must be known of a row at a glance: where it stands among its
// repeats, and what it is done with.
func brief(r align.Row) []string {
	var out []string
	for _, n := range r.Rounds {
		of := "round"
		if n.Of != "" {
			of = n.Of
		}
		out = append(out, fmt.Sprintf("%s %d of %d", of, n.Round, n.Rounds))
	}
	if r.Stages > 1 {
		out = append(out, fmt.Sprintf("stage %d of %d", r.Stage, r.Stages))
	}
	if r.Passes > 1 {
		out = append(out, fmt.Sprintf("pass %d of %d", r.Pass, r.Passes))
	}
	if r.Weight != "" {
		out = append(out, r.Weight)
	}
	if half := r.RangeWords(); half != "" {
		out = append(out, half)
	}
	return out
}

// titleOf is a track's name, its file when it has none.
func titleOf(t align.Music) string {
	if t.Title != "" {
		return t.Title
	}
	return t.File
}
