package export

import (
	"fmt"
	"path"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// turn is a track of the running order.
type turn struct {
	align.Music
	note string
}

// worthSaying is how much of a song must be left over to say so [s].
const worthSaying = 1

// runningOrder lists the tracks as they are played, also those that could not
// be analysed; not those that the class does not need.
func runningOrder(m *align.CountMap) []turn {
	var all []turn
	for _, p := range m.Parts {
		for _, t := range p.Tracks {
			note := p.Part
			switch {
			case t.Problem != "":
				note += ": " + t.Problem
			case !t.Used:
				continue
			default:
				note += fmt.Sprintf(": from %s of the class, %s BPM", say.Clock(t.ClassAt), say.Num(t.Played, 1))
				if t.Speed != 1 {
					note += fmt.Sprintf(" (recorded %s: play it at %s %%)", say.Num(t.BPM, 1), say.Num(100*t.Speed, 1))
				}
				if t.Left >= worthSaying {
					note += fmt.Sprintf(", over at %s of the song", say.Clock(t.Duration-t.Left*t.Speed))
				}
			}
			all = append(all, turn{t, say.OneLine(note)})
		}
	}
	return all
}

// location is the file's path from where the running order lies.
func (t turn) location() string {
	if t.Path != "" {
		return t.Path
	}
	return t.File
}

// name is the title, else the name of the file.
func (t turn) name() string {
	if t.Title != "" {
		return say.OneLine(t.Title)
	}
	return say.OneLine(strings.TrimSuffix(path.Base(t.File), path.Ext(t.File)))
}
