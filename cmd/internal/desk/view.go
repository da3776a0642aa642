package desk

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"onphrase/align"
	"onphrase/plan/edit"
	"onphrase/plan/say"
)

// classView is the open class: parts and songs on one axis of phrases, the
// items on them, and what is found.
type classView struct {
	Revision string        `json:"revision"`
	Name     string        `json:"name"`
	Slot     float64       `json:"slot"` // [s]
	Length   float64       `json:"length"`
	State    string        `json:"state"`
	Problems []problem     `json:"problems"`
	Undo     string        `json:"undo"` // what would be undone; empty where nothing would
	Redo     string        `json:"redo"`
	Parts    []partView    `json:"parts"`
	Findings []findingView `json:"findings"`
	Sums     sumsView      `json:"sums"`
	Say      string        `json:"say"`
}

type partView struct {
	ID      string      `json:"id"`
	Name    string      `json:"name"`
	Kind    string      `json:"kind"`
	Start   string      `json:"start"`
	BPM     string      `json:"bpm"`
	Taught  string      `json:"taught"`
	At      float64     `json:"at"` // class time [s]
	Seconds float64     `json:"seconds"`
	Tracks  []trackView `json:"tracks"`
	Names   []string    `json:"names"` // of the songs, as written
	Items   []itemView  `json:"items"`
	Waits   []rowView   `json:"waits"` // lead-ins, holds and changes of song between the items
}

// trackView is a song as a part uses it.
type trackView struct {
	Song    string       `json:"song"` // id; empty when it is missing
	Title   string       `json:"title"`
	BPM     float64      `json:"bpm"`
	Played  float64      `json:"played"`
	Problem string       `json:"problem"`
	Music   string       `json:"music"`
	Phrases []phraseView `json:"phrases"`
	Left    int          `json:"left_counts"` // music left behind the last item
}

// phraseView is a phrase of a song in class time.
type phraseView struct {
	N      int     `json:"n"`
	Counts int     `json:"counts"`
	At     float64 `json:"at"`    // class time [s]
	Track  int     `json:"track"` // time in the song [ms]
	Energy int     `json:"energy"`
}

// itemView is an item as written, and where it falls.
type itemView struct {
	ID       string            `json:"id"`
	Kind     string            `json:"kind"`
	Name     string            `json:"name"`
	Text     string            `json:"text"` // how much of it
	Keys     map[string]string `json:"keys"` // everything else that is written
	Moves    []moveView        `json:"moves"`
	Items    []itemView        `json:"items"` // of a superset
	Rows     []rowView         `json:"rows"`
	Findings []int             `json:"findings"`
}

// moveView is a move of a block.
type moveView struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Counts string `json:"counts"`
}

// rowView is a time that something is done.
type rowView struct {
	Kind    string  `json:"kind"`
	Text    string  `json:"text"`
	Track   int     `json:"track"` // index of the part's songs, -1 without
	Phrase  int     `json:"phrase"`
	Count   int     `json:"count"`
	Counts  int     `json:"counts"`
	At      float64 `json:"at"` // class time [s]
	Seconds float64 `json:"seconds"`
	Side    string  `json:"side"`
}

// findingView is a piece of advice at its place.
type findingView struct {
	Severity string `json:"severity"`
	Code     string `json:"code"`
	Say      string `json:"say"`
	Try      string `json:"try"`
	Source   string `json:"source"`
	Part     int    `json:"part"` // index, -1 for the class as such
	Item     string `json:"item"` // id, empty for none
}

// sumsView is the class in figures.
type sumsView struct {
	Shares   []shareView `json:"shares"`
	Patterns []totalView `json:"patterns"`
	Kit      []string    `json:"kit"`
}

type shareView struct {
	Kind    string  `json:"kind"`
	Seconds float64 `json:"seconds"`
}

type totalView struct {
	Name  string `json:"name"`
	Reps  int    `json:"reps"`
	Right int    `json:"right"`
	Left  int    `json:"left"`
}

// itemKeys are the keys by which an entry is an item, in the words shown.
var itemKeys = []string{"block", "set", "interval", "pause", "superset", "repeat"}

// viewOf puts a class laid on its songs beside the file as it is written.
func (d *Desk) viewOf(src []byte, m *align.CountMap) (classView, error) {
	top, err := edit.Read(src)
	if err != nil {
		return classView{}, refuse("Open it as text and mend it there.", "The class cannot be read: %v.", err)
	}
	v := classView{Revision: edit.Revision(src), Name: m.Class, Slot: m.Slot, Length: m.Length, State: "fine",
		Problems: []problem{}, Parts: []partView{}, Findings: []findingView{}, Sums: sumsOf(m)}
	items := map[int]*itemView{} // by line
	for i, e := range top.Lists["parts"] {
		if i >= len(m.Parts) {
			break
		}
		v.Parts = append(v.Parts, d.partOf(e, m, i))
	}
	for i := range v.Parts {
		collect(v.Parts[i].Items, items, top.Lists["parts"][i].Lists["do"])
	}
	for i := range m.Parts {
		for _, r := range m.RowsOf(i) {
			row := rowOf(r, m.Parts[i].Tracks)
			if it := items[r.Line]; it != nil && r.Kind.Work() {
				it.Rows = append(it.Rows, row)
			} else {
				v.Parts[i].Waits = append(v.Parts[i].Waits, row)
			}
		}
	}
	for n, f := range m.Findings {
		fv := findingView{string(f.Severity), f.Code, f.Message, f.Fix, f.Source, -1, ""}
		for i, p := range m.Parts {
			if p.Part == f.Part && f.Part != "" {
				fv.Part = i
			}
		}
		if it := items[f.Line]; it != nil {
			fv.Item = it.ID
			it.Findings = append(it.Findings, n)
		}
		v.Findings = append(v.Findings, fv)
	}
	return v, nil
}

// collect lists items by the line on which they are written.
func collect(items []itemView, by map[int]*itemView, written []edit.Entry) {
	for i := range items {
		by[written[i].Line] = &items[i]
		collect(items[i].Items, by, written[i].Lists["do"])
	}
}

func (d *Desk) partOf(e edit.Entry, m *align.CountMap, i int) partView {
	p := m.Parts[i]
	v := partView{ID: e.ID, Name: p.Part, Kind: p.Kind, Start: e.Text["start"], BPM: e.Text["bpm"],
		Taught: e.Text["taught"],
		At:     p.ClassTime, Seconds: p.Seconds, Tracks: []trackView{}, Names: e.Texts["tracks"],
		Items: itemsOf(e.Lists["do"]), Waits: []rowView{}}
	if v.Names == nil {
		v.Names = []string{}
	}
	for _, t := range p.Tracks {
		v.Tracks = append(v.Tracks, d.trackView(t))
	}
	return v
}

func (d *Desk) trackView(t align.Music) trackView {
	v := trackView{Title: t.Title, BPM: t.BPM, Played: t.Played, Problem: t.Problem, Phrases: []phraseView{}}
	if s := d.songAt(d.class.files[t.File]); s != nil {
		v.Song = d.id(s.path)
		if !s.tapped() {
			v.Music = soundAddress(v.Song, s.path)
		}
	}
	if t.Taught == nil {
		return v
	}
	v.Left = int(math.Round(t.Left * t.Played / 60))
	for n, p := range t.Taught.Phrases {
		at := t.Taught.Counts[p.First]
		v.Phrases = append(v.Phrases, phraseView{
			N: n + 1, Counts: p.Counts, At: t.ClassAt + at/max(t.Speed, 0.01), Track: millis(at), Energy: fullness[p.Energy],
		})
	}
	return v
}

func itemsOf(list []edit.Entry) []itemView {
	all := []itemView{}
	for _, e := range list {
		it := itemView{ID: e.ID, Keys: map[string]string{}, Moves: []moveView{}, Items: itemsOf(e.Lists["do"]),
			Rows: []rowView{}, Findings: []int{}}
		for _, k := range e.Keys {
			if slices.Contains(itemKeys, k) {
				it.Kind, it.Name = k, e.Text[k]
			} else if text, ok := e.Text[k]; ok {
				it.Keys[k] = text
			}
		}
		for _, m := range e.Lists["moves"] {
			it.Moves = append(it.Moves, moveView{m.ID, m.Text["move"], m.Text["counts"]})
		}
		it.Text = howMuch(it)
		all = append(all, it)
	}
	return all
}

// howMuch says how much of an item is done, as it is written.
func howMuch(it itemView) string {
	var parts []string
	for _, k := range []string{"reps", "time", "series", "times", "rounds"} {
		if text := it.Keys[k]; text != "" {
			if k == "times" || k == "rounds" {
				text = say.Many(atoi(text), strings.TrimSuffix(k, "s"))
			}
			parts = append(parts, text)
		}
	}
	if it.Keys["sides"] == "both" {
		parts = append(parts, "both sides")
	}
	return strings.Join(parts, ", ")
}

// atoi is a number as it is written, 0 where it is none.
func atoi(s string) int {
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil {
		return 0
	}
	return n
}

func rowOf(r align.Row, tracks []align.Music) rowView {
	text := r.Item
	if s := r.Rhythm.String(); s != "" && r.Reps > 0 {
		text = fmt.Sprintf("%d x %s", r.Reps, s)
	}
	track := -1
	if r.Placed {
		track = slices.IndexFunc(tracks, func(t align.Music) bool { return t.File == r.Track })
	}
	return rowView{string(r.Kind), text, track, r.Phrase, r.Count, r.Counts, r.ClassTime, r.Seconds, r.Side}
}

func sumsOf(m *align.CountMap) sumsView {
	v := sumsView{Shares: []shareView{}, Patterns: []totalView{}, Kit: []string{}}
	for _, s := range m.Summary.Shares {
		v.Shares = append(v.Shares, shareView{s.Kind, s.Seconds})
	}
	for _, t := range m.Summary.Patterns {
		v.Patterns = append(v.Patterns, totalView{t.Name, t.Reps, t.Right, t.Left})
	}
	for _, k := range m.Summary.Kit {
		v.Kit = append(v.Kit, strings.TrimSpace(k.Item+" "+strings.Join(k.Weights, ", ")))
	}
	slices.SortStableFunc(v.Patterns, func(a, b totalView) int { return cmp.Compare(b.Reps, a.Reps) })
	return v
}
