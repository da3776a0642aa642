package web

import (
	"fmt"
	"slices"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// part is one part of the class at the desk and on the wall.
type part struct {
	Name   string
	Kind   string
	Span   string
	Music  []string // as it is played, in a few words
	Songs  []song
	Rows   []entry
	Sheets []sheet
}

// song is one playing of a track at the desk.
type song struct {
	Leg     int // index into the legs; -1 when it is not played
	Title   string
	About   string
	Problem string
	Tiles   []tile
}

// entry is a row of the table.
type entry struct {
	N        int
	Plays    bool // there is something to hear
	Time     string
	Where    string
	What     string
	Dose     string
	Counts   string
	Side     string
	Say      string // when to announce it
	Brief    string
	Details  []string
	Work     bool
	Findings []finding
}

// finding is what was found, in words.
type finding struct {
	Grade, Label, Code, Message, Fix, Source string
}

// grades are the findings' grades in words, gravest first.
var grades = []struct {
	of    align.Severity
	label string
}{{align.Fix, "to fix"}, {align.Watch, "to watch"}, {align.Note, "note"}}

func partsOf(m *align.CountMap) []part {
	var out []part
	legs := 0
	for i, p := range m.Parts {
		v := part{Name: p.Part, Kind: p.Kind, Span: spanOf(p), Music: musicOf(p), Sheets: sheetsOf(m, i)}
		for _, g := range legsOf(m, i) {
			v.Songs = append(v.Songs, songOf(m, g, legs))
			legs++
		}
		for _, t := range p.Tracks {
			if !t.Used {
				v.Songs = append(v.Songs, song{Leg: -1, Title: titleOf(t), About: unused(t), Problem: t.Problem})
			}
		}
		var said []string // the same is written once
		for _, r := range m.RowsOf(i) {
			e := entryOf(m, r)
			if details := detailsOf(r); !r.Kind.Work() || !slices.Equal(details, said) {
				e.Details, said = details, details
			}
			v.Rows = append(v.Rows, e)
		}
		out = append(out, v)
	}
	return out
}

func unused(t align.Music) string {
	if t.Problem != "" {
		return t.File
	}
	return fmt.Sprintf("%s, %s BPM, not needed", t.File, say.Num(t.Played, 1))
}

func spanOf(p align.Part) string {
	if p.Seconds == 0 {
		return "no time known"
	}
	return say.Clock(p.ClassTime) + " to " + say.Clock(p.ClassTime+p.Seconds)
}

func songOf(m *align.CountMap, g playing, leg int) song {
	if g.music == nil {
		return song{Leg: leg, Title: "No music", Problem: "these items have no count to start on"}
	}
	t := *g.music
	about := say.Num(t.Played, 1) + " BPM"
	if t.Speed != 1 {
		about += " (recorded " + say.Num(t.BPM, 1) + ")"
	}
	if t.Corrected {
		about += ", corrected by you"
	}
	about += fmt.Sprintf(", first item at %s, %s left over at the end", say.Moment(t.Start), seconds(t.Left))
	return song{Leg: leg, Title: titleOf(t), About: about, Problem: t.Problem, Tiles: tilesOf(m, g)}
}

func entryOf(m *align.CountMap, r align.Row) entry {
	e := entry{
		N: r.Row, Time: "?", What: r.Item, Dose: doseOf(r), Side: r.SideWords(), Work: r.Kind.Work(),
		Plays: r.Kind != align.ChangeRow, Brief: strings.Join(brief(r), ", "), Findings: findingsOn(m, r.Row),
	}
	if r.Counts > 0 {
		e.Counts = fmt.Sprint(r.Counts)
	}
	if !r.Placed {
		return e
	}
	e.Time = say.Clock(r.ClassTime)
	if r.Phrase > 0 {
		e.Where = fmt.Sprintf("%d, count %d", r.Phrase, r.Count)
	}
	if r.CueCounts > 0 {
		e.Say = say.Clock(r.CueTime)
	}
	return e
}

// detailsOf is what is written about an item, and the same for all its rows.
func detailsOf(r align.Row) []string {
	out := []string{}
	if len(r.Moves) > 0 {
		out = append(out, align.Sequence(r.Moves))
	}
	for _, said := range [][2]string{{"say", r.Cue}, {"easier", r.Easier}, {"harder", r.Harder}} {
		if said[1] != "" {
			out = append(out, said[0]+": "+said[1])
		}
	}
	return out
}

// findingsOn lists what was found about a row; 0 is the class as a whole.
func findingsOn(m *align.CountMap, row int) []finding {
	var out []finding
	for _, g := range grades {
		for _, f := range m.Findings {
			if f.Severity == g.of && (f.Row == row || slices.Contains(f.Also, row)) {
				out = append(out, finding{string(f.Severity), g.label, f.Code, f.Message, f.Fix, f.Source})
			}
		}
	}
	return out
}

// hers lists what the instructor stands by, with where it is and her reason.
func hers(m *align.CountMap) []finding {
	var out []finding
	for _, f := range m.Known {
		text := whereOf(f) + ": " + f.Message
		if f.Reason != "" {
			text += "; you: " + f.Reason
		}
		out = append(out, finding{string(align.Note), "yours", f.Code, text, "", f.Source})
	}
	return out
}

// tally says how many findings there are of each grade.
func tally(all []align.Finding) string {
	var words []string
	for _, g := range grades {
		n := 0
		for _, f := range all {
			if f.Severity == g.of {
				n++
			}
		}
		if g.of == align.Note {
			words = append(words, say.Many(n, g.label))
		} else {
			words = append(words, fmt.Sprintf("%d %s", n, g.label))
		}
	}
	if len(all) == 0 {
		return "Nothing found."
	}
	return strings.Join(words, ", ")
}
