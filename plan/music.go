package plan

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"onphrase/plan/say"
)

// MusicList is music for the parts of a class, without what is done on it: a
// file of its own, or what another class is taught to.
//
//	onphrase: 1
//	music: spring/
//	parts:
//	  - {part: Warm-up, tracks: [new-dawn.mp3]}
//	  - {part: Round 1, tracks: [low-tide.mp3], start: phrase 2}
type MusicList struct {
	Music string // folder of the tracks, relative to the file, as written
	Parts []PartMusic
}

// PartMusic is the music of one part. Of start, tempo and how it is taught
// the zero value says nothing.
type PartMusic struct {
	Pos    Pos
	Part   string
	Tracks []TrackRef
	Start  Start
	BPM    float64
	Taught Taught
}

// ParseMusic reads a music list. A whole class file is one, too; c has the
// moves that its items may name.
func ParseMusic(file string, src []byte, c *Catalog) (*MusicList, []Problem) {
	return forgiving(src, func(src []byte) (*MusicList, []Problem) { return parseMusic(file, src, c) })
}

func parseMusic(file string, src []byte, c *Catalog) (*MusicList, []Problem) {
	r, root := open(src)
	l := &MusicList{}
	if root == nil {
		return l, r.sorted()
	}
	m, ok := r.top(root, "a list of music", file)
	if !ok {
		return l, r.sorted()
	}
	if m.has("class") {
		return musicOf(parseClass(file, src, c))
	}
	l.Music = m.path("music")
	for _, n := range m.needList("parts", "parts: and below it - {part: Warm-up, tracks: [tidewater.mp3]}") {
		if p, ok := r.partMusic(n); ok {
			l.Parts = append(l.Parts, p)
		}
	}
	m.done()
	return l, r.sorted()
}

// musicOf is the music of a class.
func musicOf(c *Class, problems []Problem) (*MusicList, []Problem) {
	l := &MusicList{Music: c.Music}
	for _, p := range c.Parts {
		l.Parts = append(l.Parts, PartMusic{p.Pos, p.Name, p.Tracks, p.Start, p.BPM, p.Taught})
	}
	return l, problems
}

func (r *reader) partMusic(n *yaml.Node) (PartMusic, bool) {
	m, ok := r.mapping(n, "the music of a part", "- {part: Warm-up, tracks: [tidewater.mp3]}")
	if !ok {
		return PartMusic{}, false
	}
	p := PartMusic{
		Pos:    at(n),
		Part:   m.needText("part", "part: Warm-up"),
		Tracks: m.tracks(),
		Start:  m.start(),
		BPM:    read(m, "bpm", m.take("bpm"), parseBPM),
		Taught: word(m, "taught", Half, Double),
	}
	m.done()
	return p, p.Part != "" && len(p.Tracks) > 0
}

// For finds the part of a class that each entry of the list is for, and
// returns the music by the index of the part. Parts go by their names,
// whatever the case and hyphens; where the class has none of the names, as
// with the music of another class, by their order.
func (l *MusicList) For(c *Class) (map[int]PartMusic, []Problem) {
	index := map[string]int{}
	var names []string
	for i, p := range c.Parts {
		if _, twice := index[nameKey(p.Name)]; !twice {
			index[nameKey(p.Name)] = i
		}
		names = append(names, p.Name)
	}
	all := map[int]PartMusic{}
	var unknown []Problem
	for _, p := range l.Parts {
		i, ok := index[nameKey(p.Part)]
		if _, twice := all[i]; ok && twice {
			unknown = append(unknown, Problem{p.Pos, fmt.Sprintf("the part %s has its music above", shown(p.Part)),
				"keep one of them"})
		}
		if ok {
			all[i] = p
			continue
		}
		hint := "the parts are " + say.Or(names)
		if near, found := say.Nearest(p.Part, names); found {
			hint = short(near) + "?"
		}
		unknown = append(unknown, Problem{p.Pos, fmt.Sprintf("the class has no part %s", shown(p.Part)), hint})
	}
	if len(all) > 0 || len(l.Parts) != len(c.Parts) {
		return all, unknown
	}
	for i, p := range l.Parts {
		all[i] = p
	}
	return all, nil
}

// SongForSong gives a class other songs in the order in which it plays its
// own: each song that it plays is another one wherever it comes. A song more
// than the class has is left; a song of the class for which there is none
// stays. It returns the music by the index of the part, and how many songs of
// the list are used.
func SongForSong(c *Class, songs []string) (map[int]PartMusic, int) {
	instead := map[string]string{}
	used := 0
	all := map[int]PartMusic{}
	for i, p := range c.Parts {
		m := PartMusic{Pos: p.Pos, Part: p.Name}
		other := false
		for _, t := range p.Tracks {
			if _, known := instead[t.File]; !known && used < len(songs) {
				instead[t.File] = songs[used]
				used++
			}
			if to, ok := instead[t.File]; ok {
				t.File, other = to, true
			}
			m.Tracks = append(m.Tracks, t)
		}
		if other {
			all[i] = m
		}
	}
	return all, used
}
