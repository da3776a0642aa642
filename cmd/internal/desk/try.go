package desk

import (
	"context"
	"strings"

	"onphrase/align"
	"onphrase/align/fit"
	"onphrase/plan"
	"onphrase/plan/edit"
)

type waysFields struct {
	Only string `json:"only"` // the name of a part, empty: all
}

// wayView is a set of changes after which more of the class lands.
type wayView struct {
	N       int      `json:"n"`
	Changes []string `json:"changes"`
	Left    int      `json:"left"` // findings to fix that stay
	Length  float64  `json:"length"`
}

// ways are the cheapest changes after which the class lands on its phrases.
func (d *Desk) ways(_ context.Context, f waysFields) (any, error) {
	d.lookNow()
	c := d.class
	if c == nil || c.plan == nil || len(c.problems) > 0 {
		return nil, refuse("Open a class that can be read.", "There is nothing to fit.")
	}
	r, err := fit.Search(fit.Job{File: c.path, Src: c.src, Known: d.home.Catalog(), Tracks: d.tracksOf(c.plan),
		Prices: fit.Usual(), Only: f.Only})
	if err != nil {
		return nil, refuse("", "Nothing can be proposed here: %v.", err)
	}
	c.ways, c.waysOf = r.Plans, edit.Revision(c.src)
	out := struct {
		Ways []wayView `json:"ways"`
	}{[]wayView{}}
	for i, p := range r.Plans {
		if len(p.Changes) == 0 {
			continue
		}
		w := wayView{N: i, Changes: []string{}, Length: p.After.Length}
		for _, ch := range p.Changes {
			w.Changes = append(w.Changes, ch.Words)
		}
		for _, left := range p.After.Findings {
			if left.Severity == align.Fix {
				w.Left++
			}
		}
		out.Ways = append(out.Ways, w)
	}
	return out, nil
}

type takeFields struct {
	Revision string `json:"revision"`
	Way      int    `json:"way"`
	Dry      bool   `json:"dry"`
}

// take makes the class what a way proposed.
func (d *Desk) take(_ context.Context, f takeFields) (any, error) {
	d.lookNow()
	c := d.class
	if c == nil || f.Way < 0 || f.Way >= len(c.ways) || c.waysOf != edit.Revision(c.src) {
		return nil, refuse("Ask for proposals once more.", "The class was changed since this was proposed.")
	}
	return d.become(c.ways[f.Way].Src, "a proposal taken", f.Dry)
}

type movesFields struct {
	Search string `json:"search"`
	Kind   string `json:"kind"`
}

type moveAnswer struct {
	Name   string   `json:"name"`
	Class  string   `json:"class"`
	Kind   string   `json:"pattern"`
	Counts int      `json:"counts"`
	Kit    []string `json:"kit"`
	Also   []string `json:"also"`
}

// mostMoves is how many moves are listed.
const mostMoves = 60

// moves searches the catalogue by everyday names, class of movement and kit.
func (d *Desk) moves(_ context.Context, f movesFields) (any, error) {
	out := struct {
		Moves []moveAnswer `json:"moves"`
	}{[]moveAnswer{}}
	words := strings.Fields(strings.ToLower(f.Search))
	for _, m := range d.home.Catalog().Moves {
		all := strings.ToLower(strings.Join(append(append([]string{m.Name, m.Class, m.Pattern}, m.Also...), m.Equipment...),
			" "))
		fits := f.Kind == "" || m.Pattern == f.Kind
		for _, w := range words {
			fits = fits && strings.Contains(all, w)
		}
		if fits && len(out.Moves) < mostMoves {
			out.Moves = append(out.Moves, moveAnswer{m.Name, m.Class, m.Pattern, m.Counts, append([]string{}, m.Equipment...),
				append([]string{}, m.Also...)})
		}
	}
	return out, nil
}

type gradesFields struct {
	Move  string  `json:"move"`
	Range string  `json:"range"`
	BPM   float64 `json:"bpm"`
}

type gradeAnswer struct {
	Rhythm string `json:"rhythm"`
	Says   string `json:"says"`
	Grade  string `json:"grade"` // in control, borderline, likely hard to control; empty where nothing is known
}

// offered are the rhythms to choose from, the slowest first.
var offered = []string{"4-4", "3-1", "2-2", "1-3", "2-1-2-1", "1-1"}

// says is a rhythm in words.
func says(r plan.Rhythm) string { return align.Rhythm{Rhythm: r}.Words() }

// grades says of each rhythm how it goes with a move at a tempo.
func (d *Desk) grades(_ context.Context, f gradesFields) (any, error) {
	out := struct {
		Rhythms []gradeAnswer `json:"rhythms"`
	}{[]gradeAnswer{}}
	c := d.home.Catalog()
	m, known := c.Find(f.Move)
	limit, limited := c.Limits[m.Class]
	for _, text := range offered {
		r, err := plan.ParseRhythm(text)
		if err != nil {
			continue
		}
		g := gradeAnswer{Rhythm: text, Says: says(r)}
		if known && limited && f.BPM > 0 {
			_, control := limit.Judge(r, plan.Range(f.Range), f.BPM)
			g.Grade = string(control)
		}
		out.Rhythms = append(out.Rhythms, g)
	}
	return out, nil
}
