package desk

import (
	"bytes"
	"context"
	"slices"
	"strconv"
	"time"

	"onphrase/align"
	"onphrase/align/fit"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/edit"
)

// class is the class that is open: the file is the only truth, and this is how
// it was read last.
type class struct {
	path     string
	src      []byte
	problems []plan.Problem // why src cannot be read; the rest is then as it was before
	plan     *plan.Class    // nil while it could never be read
	laid     int            // how often it was laid on its songs: another number, another count map
	files    map[string]string
	m        *align.CountMap
	good     []byte // the file that m was made of
	history  *edit.History
	copied   bool // a copy of it was kept in this session
	ways     []fit.Plan
	waysOf   string // the revision they were proposed for
}

// name is what the class calls itself, or its file while it cannot be read.
func (c *class) name() string {
	if c.plan != nil {
		return c.plan.Name
	}
	return baseName(c.path)
}

// openClass opens a class and the folder that its music is in.
func (d *Desk) openClass(file string) error {
	src, err := d.home.ReadClass(file)
	if err != nil {
		return err
	}
	d.class = &class{path: file, history: d.historyOf(file, src)}
	d.read(d.reading(src))
	if d.class.plan != nil {
		folder := d.home.MusicFolder(file, d.class.plan)
		if folder != d.folder {
			if err := d.openFolder(folder); err != nil {
				d.folder, d.songs = "", nil // the class says that its songs are missing
			}
		}
	}
	d.build()
	return nil
}

// historyOf is what was done to a class in earlier sessions, as far as the file
// is still as it was left then.
func (d *Desk) historyOf(file string, src []byte) *edit.History {
	if kept, err := d.home.History(file); err == nil {
		if h, err := edit.ReadHistory(kept); err == nil && h.Fits(src) {
			return h
		}
	}
	return &edit.History{}
}

// reading is the file of a class as it was understood.
type reading struct {
	src      []byte
	plan     *plan.Class
	problems []plan.Problem    // it cannot be read
	files    map[string]string // of its songs, by their names
	missing  []plan.Problem    // songs that are not there
}

// reading understands a file, also one that is not the class's yet.
func (d *Desk) reading(src []byte) reading {
	r := reading{src: src}
	r.plan, r.problems = plan.ParseWith(d.class.path, src, d.home.Catalog())
	if len(r.problems) == 0 {
		r.files, r.missing = d.home.FindMusic(d.class.path, r.plan)
	}
	return r
}

// read takes in what was read anew. What cannot be read leaves the class as it
// was, with the problems beside it.
func (d *Desk) read(r reading) {
	c := d.class
	c.src, c.problems = r.src, slices.Concat(r.problems, r.missing)
	if len(r.problems) == 0 {
		c.files = r.files
	}
	if len(c.problems) == 0 {
		c.plan, c.good = r.plan, r.src
	}
}

// build lays the class on its songs, as far as they have been heard, and tells
// all tabs.
func (d *Desk) build() {
	c := d.class
	if c == nil || c.plan == nil {
		return
	}
	c.m = align.Build(c.plan, d.tracksOf(c.plan))
	c.laid++
	for i := range c.m.Parts {
		for k := range c.m.Parts[i].Tracks {
			t := &c.m.Parts[i].Tracks[k]
			if s := d.songAt(c.files[t.File]); s != nil && !s.tapped() && t.Problem == "" {
				t.Path = soundAddress(d.id(s.path), s.path)[1:]
			}
		}
	}
	d.hub.tell("class", classEvent{edit.Revision(c.src)})
}

type classEvent struct {
	Revision string `json:"revision"`
}

// trackOf is the song that a class calls by a name, as far as it was heard.
func (d *Desk) trackOf(name string) beat.Track {
	s := d.songAt(d.class.files[name])
	switch {
	case s == nil:
		return beat.Track{File: name, Problem: "this song is not in the folder"}
	case s.state == "waiting" || s.state == "hearing":
		return beat.Track{File: name, Problem: "not heard yet"}
	case s.why != "":
		return beat.Track{File: name, Problem: s.why}
	}
	t := s.track
	t.File = name
	return t
}

// plays tells whether the open class plays a song.
func (d *Desk) plays(path string) bool {
	if d.class == nil {
		return false
	}
	for _, file := range d.class.files {
		if file == path {
			return true
		}
	}
	return false
}

// Map is the open class laid on its songs, with the name of the state it is in;
// nil when there is none.
func (d *Desk) Map() (m *align.CountMap, edition string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.class == nil || d.class.m == nil {
		return nil, ""
	}
	return d.class.m, strconv.Itoa(d.class.laid)
}

// lookEvery is how often the file of the open class is looked at.
const lookEvery = time.Second

// Watch follows the file of the open class, as somebody edits it elsewhere,
// until the context ends. Somebody has to call it, once.
func (d *Desk) Watch(ctx context.Context) {
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
			d.lookAtClass()
		}
	}
}

// lookAtClass reads the class anew if its file has changed. A file that has
// gone is a problem like others: what was read last stays on show.
func (d *Desk) lookAtClass() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.lookNow()
}

// lookNow is the same for those who hold the lock: before anything is done to a
// file, it is looked at.
func (d *Desk) lookNow() {
	c := d.class
	if c == nil {
		return
	}
	src, err := d.home.ReadClass(c.path)
	switch {
	case err != nil && len(c.problems) == 1 && c.problems[0].Msg == gone:
		return
	case err != nil:
		c.problems = []plan.Problem{{Msg: gone, Hint: "put it back, or open another"}}
	case bytes.Equal(src, c.src) && !(len(c.problems) == 1 && c.problems[0].Msg == gone):
		return
	default:
		if d.read(d.reading(src)); len(c.problems) == 0 {
			d.build()
		}
	}
	d.changed()
}

const gone = "the file of this class is no longer there"

// stateOfClass is how the open class stands; nil without one.
func (d *Desk) stateOfClass() *classState {
	c := d.class
	if c == nil {
		return nil
	}
	out := &classState{ID: d.id(c.path), Name: c.name(), Revision: edit.Revision(c.src), State: "fine",
		Problems: []problem{}}
	if len(c.problems) > 0 {
		out.State = "broken"
	}
	if c.m == nil {
		out.State = "none"
	}
	for _, p := range c.problems {
		out.Problems = append(out.Problems, problem{p.Pos.Line, p.Msg, p.Hint})
	}
	return out
}
