package align

import (
	"fmt"
	"path"
	"slices"

	"onphrase/plan/say"
)

var lowTrust = Check{
	Code:  "low-trust",
	Title: "work rests on counts or phrases that are not sure",
	Why: "If count 1 or the phrase start was found in the wrong place, everything on it is cued in the wrong " +
		"place.",
	Source:   "the analysis's own estimate of being right; below 0.5 it is more likely wrong",
	Severity: Watch,
	Left:     "a change of the class makes count 1 no surer: listen and correct the track",
	find: func(l *placedClass) []Finding {
		var d doubts
		l.each(func(p *placedPart, i int, r *placedRow) {
			if r.music != nil && r.Kind != ChangeRow {
				d.add(r, r.Kind.Work() && r.Kind != PauseRow)
			}
		})
		var out []Finding
		for _, doubt := range d {
			out = append(out, doubt.finding(l))
		}
		return out
	},
}

// doubt is one thing about a track that is not sure, with the rows that rest on
// it.
type doubt struct {
	file, what string // what: as a whole, its phrases, or a stretch of it
	stretch    [2]float64
	phrases    []int
	rows       []*placedRow
}

// doubts are gathered row by row. A track that cannot be trusted as a whole has
// one doubt, whatever else is wrong with it.
type doubts []*doubt

const wholeTrack, somePhrases, unsteadyStretch = "whole", "phrases", "unsteady"

func (d *doubts) add(r *placedRow, work bool) {
	if _, _, least := r.leastTrust(); least < trusted {
		one := d.of(r, wholeTrack, [2]float64{})
		if n := len(one.rows); n == 0 || one.rows[n-1].Part != r.Part {
			one.rows = append(one.rows, r)
		}
		return
	}
	if !work {
		return
	}
	g := r.music.grid
	for _, u := range g.track.Unsteady {
		if u[0] < r.upto && u[1] > r.at {
			one := d.of(r, unsteadyStretch, u)
			one.rows = append(one.rows, r)
			return
		}
	}
	var unsure []int
	for i := r.from; i < min(r.to, g.end()); i++ {
		if p := g.at(i); p.trust < trusted && !slices.Contains(unsure, p.phrase) {
			unsure = append(unsure, p.phrase)
		}
	}
	if len(unsure) == 0 {
		return
	}
	one := d.of(r, somePhrases, [2]float64{})
	one.rows = append(one.rows, r)
	for _, n := range unsure {
		if !slices.Contains(one.phrases, n) {
			one.phrases = append(one.phrases, n)
		}
	}
}

// of is the doubt about a row's track, a new one where there is none yet.
func (d *doubts) of(r *placedRow, what string, stretch [2]float64) *doubt {
	for _, one := range *d {
		if one.file == r.music.ref.File && one.what == what && one.stretch == stretch {
			return one
		}
	}
	one := &doubt{file: r.music.ref.File, what: what, stretch: stretch}
	*d = append(*d, one)
	return one
}

// leastTrust is the least sure of what was heard in the row's track.
func (r *placedRow) leastTrust() (what, flag string, least float64) {
	t := r.music.grid.track.Trust
	what, flag, least = "the counts", "--one", t.Beat
	if t.Count1 < least {
		what, least = "count 1", t.Count1
	}
	if t.Phrase < least {
		what, flag, least = "the phrase starts", "--phrase", t.Phrase
	}
	return what, flag, least
}

func (d *doubt) finding(l *placedClass) Finding {
	r := d.rows[0]
	f := r.about(Watch)
	for _, more := range d.rows[1:] {
		f.Also = append(f.Also, more.Row.Row)
	}
	file := path.Join(l.class.Music, d.file)
	g := r.music.grid
	switch d.what {
	case wholeTrack:
		what, flag, _ := r.leastTrust()
		t := g.track.Trust
		f.Figures = map[string]float64{"trust_beat": t.Beat, "trust_count1": t.Count1, "trust_phrase": t.Phrase}
		f.Message = fmt.Sprintf("%s: %s may be wrong all through the track", d.file, what)
		f.Fix = fmt.Sprintf("listen to it once and set what is wrong: onphrase correct %q %s TIME", file, flag)
	case unsteadyStretch:
		f.Figures = map[string]float64{"unsteady_from_seconds": d.stretch[0], "unsteady_to_seconds": d.stretch[1],
			"rows": float64(len(d.rows))}
		f.Message = fmt.Sprintf("%s has no steady beat from %s to %s; %s", d.file, say.Clock(d.stretch[0]),
			say.Clock(d.stretch[1]), d.resting("lies on it", "lie on it"))
		f.Fix = fmt.Sprintf("count it in by voice; or move it to the next phrase after %s", say.Clock(d.stretch[1]))
	default:
		f.Figures, f.Message, f.Fix = d.phraseWords(g, file)
	}
	return f
}

// phraseWords is what is said of phrases whose starts are not sure.
func (d *doubt) phraseWords(g *grid, file string) (figures map[string]float64, message, fix string) {
	slices.Sort(d.phrases)
	first := d.phrases[0]
	at := g.time(g.phraseStart(first))
	var names []string
	least := 1.0
	for _, n := range d.phrases {
		start := g.phraseStart(n)
		names = append(names, fmt.Sprintf("%d (%s)", n, say.Moment(g.time(start))))
		least = min(least, g.at(start).trust)
	}
	figures = map[string]float64{
		"trust": least, "phrase": float64(first), "phrase_seconds": at,
		"phrases": float64(len(d.phrases)), "rows": float64(len(d.rows)),
	}
	noun, verb, them := "the start of phrase", "is", "it"
	if more := len(names) - mostNamed; more > 0 {
		names = append(names[:mostNamed], fmt.Sprintf("%d more", more))
	}
	if len(names) > 1 {
		noun, verb, them = "the starts of phrases", "are", "them"
	}
	message = fmt.Sprintf("%s: %s %s %s not sure; %s", d.file, noun, say.And(names), verb,
		d.resting("rests on "+them, "rest on "+them))
	fix = fmt.Sprintf("listen there; where a phrase does start: onphrase correct %q --phrase %s", file, say.Moment(at))
	return figures, message, fix
}

// resting names what rests on the doubt.
func (d *doubt) resting(one, more string) string {
	if len(d.rows) == 1 {
		return d.rows[0].name() + " " + one
	}
	return fmt.Sprintf("%s and %s %s", d.rows[0].name(), say.Many(len(d.rows)-1, "more row"), more)
}
