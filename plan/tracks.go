package plan

import (
	"fmt"
	"path"
	"strings"

	"golang.org/x/text/unicode/norm"

	"onphrase/plan/say"
)

// TrackRef names a file in the class's music folder.
type TrackRef struct {
	Pos  Pos
	File string // with / between folders
}

func (m *mapping) tracks() []TrackRef {
	var all []TrackRef
	for _, n := range m.needList("tracks", "tracks: [tidewater.mp3]") {
		s, ok := m.r.scalar("tracks", n)
		if !ok {
			continue
		}
		if file := m.r.file("tracks", s); file != "" {
			all = append(all, TrackRef{Pos: at(n), File: file})
		}
	}
	return all
}

// path reads the name of a folder, empty when absent.
func (m *mapping) path(key string) string {
	s, ok := m.r.scalar(key, m.take(key))
	if !ok {
		return ""
	}
	return m.r.file(key, s)
}

// file is the scalar as the name of a file or folder.
func (r *reader) file(key string, s scalar) string {
	if strings.Contains(s.text, "://") {
		r.problem(s.node, fmt.Sprintf("%s: %s is an address, not a file", key, shown(s.text)), "name a file on this machine")
		return ""
	}
	if strings.ContainsAny(s.text, "\n\r") {
		r.problem(s.node, key+": a file name of several lines", "write each file as an entry of its own")
		return ""
	}
	if r.line(key, s) == "" {
		return ""
	}
	return s.text
}

// MissingFolder is the problem of a class whose music folder does not exist,
// with the nearest of the folders that lie where it should as hint.
func (c *Class) MissingFolder(beside []string) Problem {
	p := Problem{c.MusicPos, c.folder() + " does not exist", "music: names it, from where the class file is"}
	where, name := path.Split(path.Clean(c.Music))
	if near, ok := say.Nearest(name, beside); ok {
		p.Hint = short(where+near) + "/?"
	}
	return p
}

// MissingTracks returns a problem for every track of the class that is not
// among the files of its music folder, with the nearest file name as hint.
// Names are compared in Unicode form NFC: a folder copied from another system
// may spell é in two characters. A folder without any music is one problem, of
// the line that names it.
func (c *Class) MissingTracks(have []string) []Problem {
	found := make(map[string]bool, len(have))
	for _, f := range have {
		found[norm.NFC.String(f)] = true
	}
	var all []Problem
	for _, p := range c.Parts {
		for _, t := range p.Tracks {
			switch {
			case found[norm.NFC.String(t.File)]:
			case len(have) == 0:
				return []Problem{{c.MusicPos, c.folder() + " holds no music",
					"put the tracks into it, or let music: name their folder, from where the class file is"}}
			default:
				all = append(all, Problem{t.Pos, fmt.Sprintf("track %s is not in %s", shown(t.File), c.folder()),
					nearestFile(t.File, have)})
			}
		}
	}
	return all
}

// folder names the music folder for a message.
func (c *Class) folder() string {
	if c.Music == "" {
		return "the folder of the class file"
	}
	return "the music folder " + shown(c.Music)
}

// nearestFile guesses which file was meant: one of the same name but for case
// or ending, else the name with the fewest slips.
func nearestFile(name string, have []string) string {
	byStem := map[string]string{}
	var stems []string
	for _, f := range have {
		s := stem(path.Base(f))
		if say.Fold(s) == say.Fold(stem(path.Base(name))) {
			return short(f) + "?"
		}
		byStem[s] = f
		stems = append(stems, s)
	}
	if f, ok := say.Nearest(name, have); ok {
		return short(f) + "?"
	}
	if s, ok := say.Nearest(stem(path.Base(name)), stems); ok {
		return short(byStem[s]) + "?"
	}
	return fmt.Sprintf("the folder has %d tracks, among them %s", len(have), short(have[0]))
}
