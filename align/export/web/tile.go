package web

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// whole is the number of counts of a phrase that is not odd.
const whole = 32

// tile is one phrase of a song's picture: its length, how full it sounds and
// what lies on it.
type tile struct {
	Name   string // phrase 3, pick-up, after the music
	No     int    // of the phrase, 0 when it is none
	First  int    // count
	Counts int
	Time   string // of its first count in the track
	Odd    string // what it is when it is not 32 counts
	Doubt  string // how sure the start is, where it is not
	Level  int    // how full it sounds, 1 to 3; 0 when not known
	Use    string // suggested
	Sound  string // how loud it is from count to count, a path
	Over   bool   // the music has ended
	Pieces []piece
	Label  string // for those who cannot see it
}

// piece is the stretch of a row that lies on one tile.
type piece struct {
	Row    int
	Name   string
	You    string // which side is hers where she faces the class
	Dose   string // 8 x 2-2, or seconds; on its first tile only
	Left   string // where it begins [% of the tile]
	Width  string // [%]
	Goes   bool   // the row began on the tile before
	Idle   bool   // nothing is taught in it
	Grade  string // of the gravest finding about the row, on its first tile only
	Counts int
}

var levels = map[string]int{"low": 1, "medium": 2, "high": 3}

// doubtful is the trust below which a phrase start is marked: as likely
// wrong as right.
const doubtful = 0.5

func tilesOf(m *align.CountMap, g playing) []tile {
	t := g.music.Taught
	if t == nil {
		return nil
	}
	var out []tile
	end := 0
	if len(t.Phrases) > 0 {
		end = t.Phrases[0].First
	}
	if end > 0 {
		out = append(out, tile{Name: "pick-up", Counts: end})
	}
	for i, p := range t.Phrases {
		v := tile{Name: fmt.Sprintf("phrase %d", i+1), No: i + 1, First: p.First, Counts: p.Counts,
			Level: levels[string(p.Energy)], Use: string(p.Use)}
		if p.Counts != whole {
			v.Odd = string(p.Kind)
		}
		if p.Trust < doubtful {
			v.Doubt = fmt.Sprintf("start not sure, trust %.2f", p.Trust)
		}
		out = append(out, v)
		end = p.First + p.Counts
	}
	for _, r := range g.rows {
		if last := g.first(r) + r.Counts; last > end {
			out = append(out, tile{Name: "after the music", First: end, Counts: last - end, Over: true})
			end = last
		}
	}
	out = slices.DeleteFunc(out, func(v tile) bool { return v.Counts <= 0 })
	for i := range out {
		v := &out[i]
		if v.First < len(t.Counts) {
			v.Time = say.Moment(t.Counts[v.First])
		}
		v.Sound = v.outline(t)
		v.Pieces = piecesOf(m, g, v)
		v.Label = v.describe()
	}
	return out
}

// piecesOf cuts the rows to one tile.
func piecesOf(m *align.CountMap, g playing, v *tile) []piece {
	var out []piece
	for _, r := range g.rows {
		first := g.first(r)
		from, to := max(first, v.First), min(first+r.Counts, v.First+v.Counts)
		if from >= to {
			continue
		}
		p := piece{
			Row: r.Row, Name: r.Item, Goes: from > max(first, 0), Idle: !r.Kind.Work(), Counts: to - from,
			Left: percent(from-v.First, v.Counts), Width: percent(to-from, v.Counts),
		}
		if r.Side != "" {
			p.Name += " " + r.Side
			p.You = strings.TrimPrefix(r.SideWords(), r.Side)
		}
		if !p.Goes {
			p.Dose = shortDose(r)
		}
		if found := findingsOn(m, r.Row); len(found) > 0 && !p.Goes {
			p.Grade = found[0].Grade
		}
		out = append(out, p)
	}
	return out
}

func percent(n, of int) string {
	return strconv.FormatFloat(math.Round(100_000*float64(n)/float64(of))/1000, 'f', -1, 64) + "%"
}

func (v *tile) describe() string {
	words := []string{v.Name, say.Many(v.Counts, "count")}
	if v.Odd != "" {
		words = append(words, v.Odd)
	}
	if v.Doubt != "" {
		words = append(words, v.Doubt)
	}
	if v.Level > 0 {
		words = append(words, "energy "+[]string{"low", "medium", "high"}[v.Level-1])
	}
	if v.Use != "" {
		words = append(words, "suggested use: "+v.Use)
	}
	for _, p := range v.Pieces {
		words = append(words, p.Name+p.You)
	}
	return strings.Join(words, ", ")
}

// Flex is the tile's share of a line, as its number of counts; a tag is given
// room enough to be read and touched.
func (v tile) Flex() int { return max(v.Counts, 6) }

// The tile's drawing is as wide as it has counts and so high; these are paths
// in it (SVG 2, 9.3).
const soundHeight = 48

// outline is how loud the music is on every count of the tile; empty where it
// is not known.
func (v *tile) outline(t *align.Taught) string {
	if t.Outline == nil {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "M0 %d", soundHeight)
	for i := 0; i < v.Counts; {
		y, run := soundAt(t, v.First+i), 1
		for i+run < v.Counts && soundAt(t, v.First+i+run) == y {
			run++
		}
		fmt.Fprintf(&b, "V%dh%d", y, run)
		i += run
	}
	fmt.Fprintf(&b, "V%dz", soundHeight)
	return b.String()
}

func soundAt(t *align.Taught, count int) int {
	return soundHeight - int(math.Round(soundHeight*t.Sound(count)))
}

const tickHeight = 10

// Ticks are short lines where its eights begin.
func (v tile) Ticks() string {
	var b strings.Builder
	for i := 8; i < v.Counts; i += 8 {
		fmt.Fprintf(&b, "M%d %dv%d", i, soundHeight-tickHeight, tickHeight)
	}
	return b.String()
}
