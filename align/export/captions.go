package export

import (
	"slices"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// caption is what is on the screen from one moment to the next.
type caption struct {
	from, to float64 // [s]
	lines    []string
}

// longestCall is how long something called out stays on the screen [s].
const longestCall = 2

// noCaptions is how long the screen says that there is nothing to say [s].
const noCaptions = 5

// note is a line that is shown for a while.
type note struct {
	from, to float64
	text     string
}

// captions says what is done, from the cue on also what comes next, and what
// to call out. No two of them overlap: not every player can show two.
func captions(m *align.CountMap) []caption {
	notes := notes(acts(m))
	var edges []float64
	for _, n := range notes {
		edges = append(edges, n.from, n.to)
	}
	slices.Sort(edges)
	edges = slices.Compact(edges)
	var all []caption
	for i := 1; i < len(edges); i++ {
		c := caption{from: edges[i-1], to: edges[i]}
		for _, n := range notes {
			if n.from <= c.from && c.from < n.to {
				c.lines = append(c.lines, n.text)
			}
		}
		last := len(all) - 1
		switch {
		case len(c.lines) == 0:
		case last >= 0 && all[last].to == c.from && slices.Equal(all[last].lines, c.lines):
			all[last].to = c.to
		default:
			all = append(all, c)
		}
	}
	if len(all) == 0 {
		all = []caption{{0, noCaptions, []string{"nothing in this class has a place on its music"}}}
	}
	return all
}

// notes lists what acts put on the screen, what is done before what comes next
// before what is called out.
func notes(acts []act) []note {
	var now, next, calls []note
	several := overlap(acts)
	add := func(all *[]note, from, to float64, text string) {
		from, to = clean(from), clean(to)
		if text = say.OneLine(text); from < to && text != "" {
			*all = append(*all, note{from, to, text})
		}
	}
	for _, a := range acts {
		of := "" // which part it belongs to, where that is not plain
		if several {
			of = a.part + ": "
		}
		add(&now, a.from, a.to, of+a.what)
		if a.words != "" {
			add(&next, a.cue, a.from, "next: "+of+a.words)
		}
		for i, c := range a.calls {
			to := min(c.ClassTime+longestCall, a.to)
			if i+1 < len(a.calls) {
				to = min(to, a.calls[i+1].ClassTime)
			}
			add(&calls, c.ClassTime, to, of+spoken(c.Say))
		}
	}
	return slices.Concat(now, next, calls)
}

// overlap reports whether acts come at the same time, as those of two parts
// taught on one song do on that song's timeline.
func overlap(acts []act) bool {
	for i := 1; i < len(acts); i++ {
		if acts[i].from < acts[i-1].to-rounding && acts[i].part != acts[i-1].part {
			return true
		}
	}
	return false
}

// clean is a time as files have it: whole milliseconds, not before 0:00 [s].
func clean(seconds float64) float64 { return float64(milliseconds(seconds)) / 1000 }

// milliseconds is a time in the unit of most files, not before 0:00.
func milliseconds(seconds float64) int { return max(0, int(seconds*1000+0.5)) }

// playerText replaces the signs that begin and end a command in the players
// built on ffmpeg, whatever the format of the captions. None has a way to write
// them.
var playerText = strings.NewReplacer("{", "(", "}", ")", `\`, "/")
