package export

import (
	"fmt"
	"path"
	"strings"

	"onphrase/align"
)

// OnTrack is what of the class is taught on one of its tracks, on the track's
// own timeline as recorded: what is class time elsewhere is the track's time
// there, with the first sample at 0. The track goes by its file, its file's
// name, with or without folder and ending, or its title.
func OnTrack(m *align.CountMap, name string) (*align.CountMap, error) {
	file, err := trackFile(m, name)
	if err != nil {
		return nil, err
	}
	played := uses(m)
	out := &align.CountMap{Facing: m.Facing, Parts: []align.Part{}, Rows: []align.Row{}, Findings: []align.Finding{}}
	for _, u := range played {
		if u.File != file {
			continue
		}
		out.Class, out.Length = u.Title, u.Duration
		if out.Class == "" {
			out.Class = path.Base(u.File)
		}
		part := align.Part{Part: u.part, Tracks: []align.Music{u.asRecorded()}}
		for _, r := range m.Rows {
			if on, ok := useOf(played, r); !ok || on.ClassAt != u.ClassAt || !r.Placed || r.Kind == align.ChangeRow {
				continue
			}
			r = u.onTrack(r)
			r.Row = len(out.Rows) + 1
			if part.Row == 0 {
				part.Row, part.ClassTime = r.Row, r.ClassTime
			}
			part.Seconds = clean(r.ClassTime + r.Seconds - part.ClassTime)
			out.Rows = append(out.Rows, r)
		}
		out.Parts = append(out.Parts, part)
	}
	return out, nil
}

// asRecorded is the track on its own timeline.
func (u use) asRecorded() align.Music {
	t := u.Music
	t.ClassAt, t.Speed, t.Played, t.Left = 0, 1, t.BPM, t.Left*t.Speed
	return t
}

// onTrack is a row on the timeline of its track. What is announced or called
// out before the track begins is so at its beginning.
func (u use) onTrack(r align.Row) align.Row {
	at := func(class float64) float64 { return clean((class - u.ClassAt) * u.Speed) }
	r.ClassTime, r.CueTime, r.Seconds = r.TrackTime, at(r.CueTime), clean(r.Seconds*u.Speed)
	marks := make([]align.Mark, len(r.Marks))
	for i, c := range r.Marks {
		marks[i] = align.Mark{ClassTime: at(c.ClassTime), Say: c.Say}
	}
	r.Marks = marks
	return r
}

// Tracks lists the files of the tracks that the class is laid on, in the order
// played, each once.
func Tracks(m *align.CountMap) []string {
	var files []string
	seen := map[string]bool{}
	for _, u := range uses(m) {
		if !seen[u.File] {
			seen[u.File] = true
			files = append(files, u.File)
		}
	}
	return files
}

// trackFile finds the track that a name means.
func trackFile(m *align.CountMap, name string) (string, error) {
	stem := func(s string) string { return strings.TrimSuffix(path.Base(s), path.Ext(s)) }
	files := Tracks(m)
	same := []func(u use) bool{
		func(u use) bool { return u.File == name },
		func(u use) bool { return strings.EqualFold(path.Base(u.File), path.Base(name)) },
		func(u use) bool { return strings.EqualFold(u.Title, name) || strings.EqualFold(stem(u.File), name) },
	}
	for _, is := range same {
		meant := ""
		for _, u := range uses(m) {
			if is(u) && u.File != meant {
				if meant != "" {
					return "", fmt.Errorf("%q may be %s or %s", name, meant, u.File)
				}
				meant = u.File
			}
		}
		if meant != "" {
			return meant, nil
		}
	}
	if len(files) == 0 {
		return "", fmt.Errorf("no track %q: nothing of this class has a place on any music", name)
	}
	return "", fmt.Errorf("nothing of this class is on a track %q; there are %s", name, strings.Join(files, ", "))
}
