package export

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// said is something to say, and when.
type said struct {
	at    float64 // class time [s]
	words string
}

// writeCues writes what to say and when, part by part, at class time and at
// the time of the track, which is what a player shows.
func writeCues(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: what to say, and when\n", say.OneLine(m.Class))
	all := acts(m)
	for _, u := range uses(m) {
		part := cuesOn(u, all)
		if len(part) == 0 {
			continue
		}
		title := u.Title
		if title == "" {
			title = u.File
		}
		fmt.Fprintf(&b, "\n%s, on %s\n\n  class   song\n", say.OneLine(u.part), say.OneLine(title))
		for _, s := range part {
			song := "" // what is said before the song begins
			if at := (s.at - u.ClassAt) * u.Speed; at > -rounding {
				song = say.Clock(at)
			}
			fmt.Fprintf(&b, "%7s%7s  %s\n", say.Clock(s.at), song, say.OneLine(s.words))
		}
	}
	for _, s := range unplaced(m) {
		fmt.Fprintf(&b, "\n%s\n", say.OneLine(s))
	}
	cautions(&b)
	_, err := io.WriteString(w, b.String())
	return err
}

// countdownGap is how close calls follow each other that make one countdown
// [s]: a count at 60 BPM.
const countdownGap = 1.0

// cuesOn lists what to say for what is done on a track, in the order of time.
func cuesOn(u use, all []act) []said {
	var list []said
	for _, a := range all {
		if a.from < u.ClassAt-rounding || a.from >= u.ends-rounding {
			continue
		}
		if a.words != "" {
			list = append(list, said{a.cue, a.words})
		}
		last := math.Inf(-1)
		for _, c := range a.calls {
			if c.ClassTime-last < countdownGap {
				list[len(list)-1].words += " " + spoken(c.Say)
			} else {
				list = append(list, said{c.ClassTime, spoken(c.Say)})
			}
			last = c.ClassTime
		}
	}
	slices.SortStableFunc(list, func(x, y said) int { return milliseconds(x.at) - milliseconds(y.at) })
	return list
}

// Kit writes what everybody needs to have ready, as a list to tick off.
func Kit(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: what everybody needs\n\n", say.OneLine(m.Class))
	for _, k := range m.Summary.Kit {
		text := k.Item
		if len(k.Weights) > 0 {
			text += ": " + strings.Join(k.Weights, "; ")
		}
		fmt.Fprintf(&b, "[ ] %s\n", say.OneLine(text))
	}
	if len(m.Summary.Kit) == 0 {
		b.WriteString("nothing but water and room\n")
	}
	cautions(&b)
	_, err := io.WriteString(w, b.String())
	return err
}

// cautions ends a sheet.
func cautions(b *strings.Builder) {
	for _, c := range Cautions {
		fmt.Fprintf(b, "\n%s\n", strings.Join(say.Wrap(c, usualWidth), "\n"))
	}
}
