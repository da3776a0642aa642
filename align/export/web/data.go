package web

import (
	"math"
	"net/url"
	"slices"
	"strings"

	"onphrase/align"
)

// stage is what the script is given. Counts are indices into a leg's counts,
// track times are milliseconds, class times seconds.
type stage struct {
	Class  string  `json:"class"`
	Length float64 `json:"length"`
	Mirror bool    `json:"mirror"` // the instructor faces the class
	Parts  []span  `json:"parts"`
	Legs   []leg   `json:"legs"`
}

// span is a part in class time [s].
type span struct {
	Name    string  `json:"name"`
	At      float64 `json:"at"`
	Seconds float64 `json:"seconds"`
}

// leg is the rows that are taught on one playing of a track, or a part's rows
// that have no music.
type leg struct {
	Part    int      `json:"part"`
	Title   string   `json:"title"`
	Source  string   `json:"source"` // of the music, empty when it is not known
	Speed   float64  `json:"speed"`  // 1 as recorded
	Zero    float64  `json:"zero"`   // class time of the track's 0:00 [s]
	Counts  []int    `json:"counts"` // [ms]
	Phrases [][2]int `json:"phrases"`
	Rows    []row    `json:"rows"`
}

// row is one thing that happens, as the stage shows it.
type row struct {
	N       int           `json:"n"`
	Kind    string        `json:"kind"`
	Name    string        `json:"name"`
	From    int           `json:"from"`
	Counts  int           `json:"counts"`
	At      int           `json:"at"`   // track time [ms]
	Class   float64       `json:"time"` // class time [s]
	Seconds float64       `json:"seconds"`
	Clock   bool          `json:"clock"` // timed by the clock
	Reps    int           `json:"reps"`
	Phases  []align.Phase `json:"phases"` // of one repetition
	Early   int           `json:"early"`  // counts before it to announce it
	Side    string        `json:"side"`
	Detail  string        `json:"detail"` // pass, weight, range
	Say     string        `json:"say"`
	Easier  string        `json:"easier"`
	Harder  string        `json:"harder"`
	Moves   []step        `json:"moves"`
}

// step is one move of a block.
type step struct {
	Name   string `json:"name"`
	From   int    `json:"from"` // counts after the row's first
	Counts int    `json:"counts"`
	Lead   string `json:"lead"`
}

func stageOf(m *align.CountMap) stage {
	s := stage{Class: m.Class, Length: m.Length, Mirror: m.Facing == "class", Parts: []span{}, Legs: []leg{}}
	for i, p := range m.Parts {
		s.Parts = append(s.Parts, span{p.Part, p.ClassTime, p.Seconds})
		for _, g := range legsOf(m, i) {
			s.Legs = append(s.Legs, g.data(i))
		}
	}
	return s
}

// playing is one track of a part with the rows laid on it.
type playing struct {
	music *align.Music // nil for rows without music
	rows  []align.Row
}

// legsOf shares a part's rows out among its tracks, in the order in which
// they are played. The row that says to change belongs to none.
func legsOf(m *align.CountMap, part int) []playing {
	var out []playing
	tracks := m.Parts[part].Tracks
	for _, r := range m.RowsOf(part) {
		if r.Kind == align.ChangeRow {
			out = append(out, playing{})
			continue
		}
		if len(out) == 0 {
			out = append(out, playing{})
		}
		g := &out[len(out)-1]
		if i := slices.IndexFunc(tracks, func(t align.Music) bool { return t.Used && t.File == r.Track }); g.music == nil &&
			i >= 0 {
			g.music, tracks = &tracks[i], tracks[i+1:]
		}
		g.rows = append(g.rows, r)
	}
	return slices.DeleteFunc(out, func(g playing) bool { return len(g.rows) == 0 })
}

// first is the count a row begins on.
func (g playing) first(r align.Row) int {
	if g.music == nil || g.music.Taught == nil {
		return 0
	}
	if r.Kind == align.LeadIn { // it ends on the count the first item begins on
		return nearest(g.music.Taught.Counts, g.music.Start) - r.Counts
	}
	return nearest(g.music.Taught.Counts, r.TrackTime)
}

// nearest is the count nearest to a time, also after the last one.
func nearest(counts []float64, t float64) int {
	n := len(counts)
	if n < 2 {
		return 0
	}
	if last := counts[n-1]; t > last {
		return n - 1 + int(math.Round((t-last)/(last-counts[n-2])))
	}
	i, _ := slices.BinarySearch(counts, t)
	if i > 0 && t-counts[i-1] < counts[i]-t {
		return i - 1
	}
	return i
}

func (g playing) data(part int) leg {
	l := leg{Part: part, Speed: 1, Counts: []int{}, Phrases: [][2]int{}, Rows: []row{}}
	if g.music != nil {
		l.Title, l.Speed, l.Zero = titleOf(*g.music), g.music.Speed, g.music.ClassAt
		l.Source = address(g.music.Path)
		if t := g.music.Taught; t != nil {
			for _, c := range t.Counts {
				l.Counts = append(l.Counts, millis(c))
			}
			for _, p := range t.Phrases {
				l.Phrases = append(l.Phrases, [2]int{p.First, p.Counts})
			}
		}
	} else if len(g.rows) > 0 {
		l.Zero = g.rows[0].ClassTime
	}
	for _, r := range g.rows {
		l.Rows = append(l.Rows, g.row(r))
	}
	return l
}

func (g playing) row(r align.Row) row {
	out := row{
		N: r.Row, Kind: string(r.Kind), Name: r.Item, From: g.first(r), Counts: r.Counts, At: millis(r.TrackTime),
		Class: r.ClassTime, Seconds: r.Seconds, Clock: r.ByClock, Reps: r.Reps, Phases: r.Rhythm.Phases(),
		Early: r.CueCounts, Side: r.Side, Detail: strings.Join(brief(r), ", "), Say: r.Cue,
		Easier: r.Easier, Harder: r.Harder, Moves: []step{},
	}
	for _, m := range r.Moves {
		name := strings.Join(append([]string{m.Move}, m.With...), " + ")
		out.Moves = append(out.Moves, step{name, m.Count - 1, m.Counts, m.Lead})
	}
	return out
}

func millis(s float64) int { return int(math.Round(s * 1000)) }

// address is the URL of a file given by its path, with slashes, from where
// the page lies. It always begins so that no name can be taken for a scheme.
func address(path string) string {
	if path == "" {
		return ""
	}
	segments := strings.Split(path, "/")
	for i, s := range segments {
		segments[i] = url.PathEscape(s)
	}
	escaped := strings.Join(segments, "/")
	switch {
	case strings.HasPrefix(path, "/"):
		return "file://" + escaped
	case strings.HasPrefix(path, "../"):
		return escaped
	}
	return "./" + escaped
}
